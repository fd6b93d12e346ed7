/** Who a phone is in a night. A looker-on reads and never writes. */
export const ROLES = ['lead', 'assistant', 'looker-on'] as const;
export type Role = (typeof ROLES)[number];

export const isRole = (text: unknown): text is Role => ROLES.some((role) => role === text);

/** The other phone: whom a heads-up from this role is meant for. */
export const otherRole = (role: Role): Role => (role === 'lead' ? 'assistant' : 'lead');
