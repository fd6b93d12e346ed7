import { feetFromMetres } from '../../core/units/length.ts';
import type { Units } from '../../shared/document/schema.ts';

/**
 * A length as it was typed or drawn, to the centimetre or the tenth of a foot: what a plan is made of must not be
 * rounded as what is walked is.
 *
 * @param lengthM length [m]
 */
export const measuredLabel = (lengthM: number, units: Units): string =>
  units === 'metric' ? `${Number(lengthM.toFixed(2))} m` : `${Number(feetFromMetres(lengthM).toFixed(1))} ft`;
