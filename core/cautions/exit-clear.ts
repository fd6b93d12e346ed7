import { distanceToOutline } from '../geometry/polygon.ts';
import type { Spot } from '../geometry/spot.ts';
import { type Caution, metresInWords, notChecked } from './caution.ts';

/** A way out, drawn on the plan. */
export type Exit = { readonly id: string; readonly name: string; readonly outline: readonly Spot[] };

/** Width of a corridor on the way out, 44 in [m]; taken as the depth to keep free. @source ibc-corridor */
export const EXIT_CLEAR_M = 1.118;
/** From here on a stand begins to be in people's way to the exit [m]: our own rule. @source own-rule */
const EXIT_NEAR_M = 2;

const SOURCE = 'Our rule from the US corridor width, 44 in; US workplace rule on exit routes';
const TITLE = 'Exit';

type Nearest = { readonly exit: Exit; readonly gapM: number };

function nearestExit(stand: Spot, footprintRadiusM: number, exits: readonly Exit[]): Nearest | null {
  let nearest: Nearest | null = null;
  for (const exit of exits) {
    const awayM = distanceToOutline(exit.outline, stand);
    if (awayM === null) continue;
    const gapM = Math.max(0, awayM - footprintRadiusM);
    if (nearest === null || gapM < nearest.gapM) nearest = { exit, gapM };
  }
  return nearest;
}

/**
 * Whether a stand keeps out of the space in front of an exit. The space is taken all round the exit as
 * drawn: its own width and 1.118 m out from it.
 *
 * @param footprintRadiusM legs around the column [m]
 * @returns 'stop' within 1.118 m of the nearest exit, 'caution' within 2 m, else null; an 'info' "Not
 *   checked" when no exit is drawn
 * @source osha-exit-route
 * @source ibc-corridor
 */
export function exitCaution({
  stand,
  footprintRadiusM,
  exits,
}: {
  readonly stand: Spot;
  readonly footprintRadiusM: number;
  readonly exits: readonly Exit[];
}): Caution | null {
  const nearest = nearestExit(stand, footprintRadiusM, exits);
  if (!nearest) return notChecked('exit', TITLE, 'no exit is drawn on the plan', SOURCE);
  const { exit, gapM } = nearest;
  if (gapM >= EXIT_NEAR_M) return null;
  const blocked = gapM < EXIT_CLEAR_M;
  return {
    id: 'exit',
    level: blocked ? 'stop' : 'caution',
    title: blocked ? 'In front of an exit' : 'Near an exit',
    detail: blocked
      ? `${metresInWords(gapM)} from ${exit.name}; keep ${EXIT_CLEAR_M} m free. Exit routes stay free all ` +
        'the time: "only for a moment" does not excuse it. Ask the venue.'
      : `${metresInWords(gapM)} from ${exit.name}; under ${EXIT_NEAR_M} m people leaving may meet it, and ` +
        `${EXIT_CLEAR_M} m must stay free. Venue rules come first.`,
    value: gapM,
    limit: blocked ? EXIT_CLEAR_M : EXIT_NEAR_M,
    unit: 'm',
    source: SOURCE,
  };
}
