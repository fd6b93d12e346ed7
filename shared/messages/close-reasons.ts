/**
 * Why a sync socket was closed for good, as data: the code travels, the screen words it.
 * Codes 4400–4499 tell the phone to stop trying; anything else means "try again" (SPEC SYN8).
 */
export const CLOSE_REASONS = {
  garbage: 4400,
  unpaired: 4401,
  'not-allowed': 4403,
  'no-such-night': 4404,
  'other-version': 4409,
  'too-large': 4413,
  'too-many': 4429,
} as const;

export type CloseReason = keyof typeof CLOSE_REASONS;

/** The reason of a close code; null for a code that asks to try again. */
export function closeReason(code: number): CloseReason | null {
  for (const [reason, known] of Object.entries(CLOSE_REASONS)) {
    if (known === code) return reason as CloseReason;
  }
  return null;
}
