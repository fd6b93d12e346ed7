import { lengthLabel } from '../../core/units/length.ts';
import type { Units } from '../../shared/document/schema.ts';
import type { Elsewhere, OwnOffset } from '../state/elsewhere.ts';
import { lengthChange } from './mark-words.ts';

/** Why a stand could not go where it was called, with one press. */
export const ELSEWHERE_NOTES = ['guests', 'table', 'no floor'] as const;

/** Under this an offset is not told: nobody places a stand to the centimetre. */
const TOLD_FROM_M = 0.05;

const far = (lengthM: number, units: Units): string =>
  Math.abs(lengthM) < 1 ? lengthChange(lengthM, units) : lengthLabel(Math.abs(lengthM), units);

/** "1 m back, 30 cm to the left": in the sense of who set it. */
export function offsetWords({ aheadM, rightM }: OwnOffset, units: Units): string {
  const parts = [
    ...(Math.abs(aheadM) < TOLD_FROM_M ? [] : [`${far(aheadM, units)} ${aheadM > 0 ? 'ahead' : 'back'}`]),
    ...(Math.abs(rightM) < TOLD_FROM_M
      ? []
      : [`${far(rightM, units)} to the ${rightM > 0 ? 'right' : 'left'}`]),
  ];
  return parts.length > 0 ? parts.join(', ') : 'on its mark';
}

/** "K set 1 m short: guests": what the lead has to know. */
export function elsewhereWords(letter: string, elsewhere: Elsewhere, units: Units): string {
  const { offM, side, note } = elsewhere;
  const where = side.startsWith('camera') ? `to ${side}` : side;
  return `${letter} set ${far(offM, units)} ${where}: ${note ?? 'as near as they could'}`;
}
