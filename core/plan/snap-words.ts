import { spokenName } from '../guidance/landmark.ts';
import { feetFromMetres, type LengthUnits, lengthLabel } from '../units/length.ts';
import { valueInWords } from './room-outline.ts';
import type { SnapTo } from './snap.ts';

/** Squares that have a name of their own [m]. */
const NAMED_GRIDS: readonly (readonly [number, string])[] = [
  [1, 'one-metre'],
  [0.5, 'half-metre'],
  [0.25, 'quarter-metre'],
];

function gridWords(gridM: number, units: LengthUnits): string {
  if (units === 'imperial') return `on the ${valueInWords(feetFromMetres(gridM), ' ft')} grid`;
  const named = NAMED_GRIDS.find(([sizeM]) => Math.abs(sizeM - gridM) < 1e-9);
  return `on the ${named ? named[1] : valueInWords(gridM, ' m')} grid`;
}

/**
 * What a spot was snapped to, in words: "1 m from the bar", "at the edge of table 4", "on the wall", "0.5 m
 * from the wall", "in the corner", "on the half-metre grid".
 */
export function snapWords(to: SnapTo, units: LengthUnits): string {
  switch (to.kind) {
    case 'table-edge':
    case 'feature': {
      const name = spokenName(to.name ?? 'edge');
      return to.distanceM > 0 ? `${lengthLabel(to.distanceM, units)} from ${name}` : `at the edge of ${name}`;
    }
    case 'corner':
      return 'in the corner';
    case 'wall':
      return 'on the wall';
    case 'wall-parallel':
      return `${lengthLabel(to.distanceM, units)} from the wall`;
    case 'grid':
      return gridWords(to.distanceM, units);
  }
}
