import type { Night } from '../../shared/document/snapshot.ts';

/** What a person of the night is called; one whose entry has not arrived yet is the other phone. */
export const personName = (night: Night, id: string): string =>
  [...night.people.values()].find((person) => person.id === id)?.name ?? 'the other phone';
