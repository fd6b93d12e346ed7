import { isPositive } from '../../units/finite.ts';
import { F_NUMBERS, ISO_SPEEDS, type Nominal } from '../../units/nominal.ts';
import type { LightJob } from '../subject/subject-levels.ts';
import { distanceForChangeM, type Falloff } from './distance-for-change.ts';
import type { PowerProblem } from './power-targets.ts';
import { type SolvedLight, type SolvedPowers, solvePowers } from './solve-powers.ts';

/** What the advice needs to know of a light beside the problem; found by id. */
export type AdvisedLight = {
  readonly id: string;
  readonly job: LightJob;
  /** Power it is set to now [stops]; null: not known */
  readonly setStops: number | null;
  /** To the subject [m] */
  readonly distanceM: number;
  /** How its light falls with distance; null: inverse square */
  readonly falloff: Falloff | null;
};

/** One thing to do, in the order in which to try. `after` holds ALL powers that follow from it. */
export type Advice =
  | {
      readonly kind: 'set-power';
      readonly lightId: string;
      readonly fromStops: number | null;
      readonly powerStops: number;
    }
  | {
      readonly kind: 'raise-iso';
      readonly because: 'too-weak' | 'key-above-sixteenth';
      readonly lightId: string;
      readonly iso: Nominal;
      readonly after: SolvedPowers;
    }
  | {
      readonly kind: 'close-aperture';
      readonly lightId: string;
      readonly aperture: Nominal;
      readonly after: SolvedPowers;
    }
  | { readonly kind: 'move-nearer' | 'move-back'; readonly lightId: string; readonly distanceM: number };

/** Above this the key recycles slowly and eats its battery: 1/16 [stops]. */
const KEY_MOST_STOPS = -4;
/** Less than half a click of a dial is no change [stops]. */
const HALF_CLICK_STOPS = 1 / 6;

type Request = {
  readonly problem: PowerProblem;
  readonly exposure: { readonly iso: number; readonly fNumber: number };
  readonly lights: readonly AdvisedLight[];
  /** The camera's highest usable speed */
  readonly highestIso: number;
  /** What `solvePowers` gave for the problem, where it is at hand already */
  readonly solution?: SolvedPowers | undefined;
};
/** A light of the request with what was solved for it. */
type Pair = { readonly light: AdvisedLight; readonly solved: SolvedLight & { readonly powerStops: number } };

/** The problem at another exposure: every light counts so many times as much. */
function brightened(problem: PowerProblem, factor: number): PowerProblem {
  const targets = problem.targets.map((target) => ({
    ...target,
    rows: target.rows.map(({ perLight, base }) => ({
      perLight: perLight.map((light) => light * factor),
      base: base * factor,
    })),
  }));
  return { ...problem, targets };
}

function pairsOf(lights: readonly AdvisedLight[], solution: SolvedPowers): Pair[] {
  return lights.flatMap((light) => {
    const solved = solution.lights.find(({ id }) => id === light.id);
    if (!solved || solved.powerStops === null) return [];
    return [{ light, solved: { ...solved, powerStops: solved.powerStops } }];
  });
}

function fails(solution: SolvedPowers, hindrance: 'too-weak' | 'too-strong'): boolean {
  return solution.targets.some((target) => target.hindrance === hindrance);
}

function isTooWeak({ solved }: Pair): boolean {
  return solved.bound === 'full' && (solved.neededStops ?? 0) > HALF_CLICK_STOPS;
}

function isTooStrong({ solved }: Pair): boolean {
  const { bound, neededStops, powerStops } = solved;
  return bound === 'least' && (neededStops === null || neededStops < powerStops - HALF_CLICK_STOPS);
}

function powerAdvice(pairs: readonly Pair[]): Advice[] {
  return pairs.flatMap(({ light, solved }): Advice[] => {
    const fromStops = light.setStops;
    const { powerStops } = solved;
    if (fromStops !== null && Math.abs(fromStops - powerStops) <= HALF_CLICK_STOPS) return [];
    return [{ kind: 'set-power', lightId: light.id, fromStops, powerStops }];
  });
}

function keyIsLow(lights: readonly AdvisedLight[], solution: SolvedPowers): boolean {
  return pairsOf(lights, solution)
    .filter(({ light }) => light.job === 'key')
    .every(({ solved }) => solved.powerStops <= KEY_MOST_STOPS + 1e-9);
}

/** A setting and what is solved at it. */
type Setting = { readonly entry: Nominal; readonly after: SolvedPowers };

/**
 * The first setting of a rising scale at which the answer is good. It stays good from there on, so halving the
 * list finds it with few solutions.
 */
function firstGood(
  scale: readonly Nominal[],
  solve: (entry: Nominal) => SolvedPowers,
  isGood: (after: SolvedPowers) => boolean,
): Setting | null {
  let found: Setting | null = null;
  let [low, high] = [0, scale.length - 1];
  // The last one first: often none will do.
  let at = high;
  while (low <= high) {
    const entry = scale[at];
    if (!entry) break;
    const after = solve(entry);
    if (isGood(after)) {
      found = { entry, after };
      high = at - 1;
    } else {
      low = at + 1;
    }
    at = (low + high) >> 1;
  }
  return found;
}

/** The next ISO at which no light is too weak and the key is at 1/16 or below, if something asks for it. */
function isoAdvice(request: Request, pairs: readonly Pair[], weak: Pair | undefined): Advice[] {
  const { problem, lights, highestIso, exposure } = request;
  const highKey = pairs.find(
    ({ light, solved }) => light.job === 'key' && solved.powerStops > KEY_MOST_STOPS + 1e-9,
  );
  const reason = weak ?? highKey;
  if (!reason || !isPositive(exposure.iso)) return [];
  const upStops = ({ exact }: Nominal) => Math.log2(exact) - Math.log2(exposure.iso);
  const found = firstGood(
    ISO_SPEEDS.filter(
      (entry) => upStops(entry) > HALF_CLICK_STOPS && entry.exact <= highestIso * 2 ** HALF_CLICK_STOPS,
    ),
    (entry) => solvePowers(brightened(problem, 2 ** upStops(entry))),
    (after) => !fails(after, 'too-weak') && keyIsLow(lights, after),
  );
  if (!found) return [];
  const because = weak ? 'too-weak' : 'key-above-sixteenth';
  return [{ kind: 'raise-iso', because, lightId: reason.light.id, iso: found.entry, after: found.after }];
}

/** The next f-number at which no light is too strong. */
function apertureAdvice({ problem, exposure }: Request, strong: Pair): Advice[] {
  if (!isPositive(exposure.fNumber)) return [];
  const downStops = ({ exact }: Nominal) => 2 * (Math.log2(exact) - Math.log2(exposure.fNumber));
  const found = firstGood(
    F_NUMBERS.filter((entry) => downStops(entry) > HALF_CLICK_STOPS),
    (entry) => solvePowers(brightened(problem, 2 ** -downStops(entry))),
    (after) => !fails(after, 'too-strong'),
  );
  if (!found) return [];
  return [{ kind: 'close-aperture', lightId: strong.light.id, aperture: found.entry, after: found.after }];
}

function moveAdvice(kind: 'move-nearer' | 'move-back', { light, solved }: Pair): Advice[] {
  if (light.job === 'camera' || solved.neededStops === null) return [];
  const changeStops = solved.neededStops - solved.powerStops;
  const distanceM = distanceForChangeM(light.distanceM, changeStops, light.falloff);
  return distanceM === null ? [] : [{ kind, lightId: light.id, distanceM }];
}

/**
 * What to do about the powers, in the trade's order: power first. A key that needs more than 1/16, or a
 * light too weak at full, asks for the next ISO (third stops) at which the key is at 1/16 or below and
 * nothing is too weak; a light too weak may also come nearer. A light too bright at its head's least power
 * moves back, or the aperture closes. ISO and aperture act on the ambient too: all is solved anew for them.
 *
 * ASSUMPTION: a light that moves changes only by its law of distance, at the subject and behind it alike.
 *
 * @param request problem at the present exposure, exposure, lights, highest ISO of the camera; the solution, if it is known
 * @returns things to do in the order to try them, as values; empty when everything is set already
 * @source own-rule
 */
export function adviseOnPowers(request: {
  readonly problem: PowerProblem;
  readonly exposure: { readonly iso: number; readonly fNumber: number };
  readonly lights: readonly AdvisedLight[];
  readonly highestIso: number;
  readonly solution?: SolvedPowers | undefined;
}): Advice[] {
  const solution = request.solution ?? solvePowers(request.problem);
  const pairs = pairsOf(request.lights, solution);
  const weak = fails(solution, 'too-weak') ? pairs.filter(isTooWeak) : [];
  const strong = fails(solution, 'too-strong') ? pairs.filter(isTooStrong) : [];
  return [
    ...powerAdvice(pairs),
    ...isoAdvice(request, pairs, weak[0]),
    ...weak.flatMap((pair) => moveAdvice('move-nearer', pair)),
    ...strong.flatMap((pair) => moveAdvice('move-back', pair)),
    ...(strong[0] ? apertureAdvice(request, strong[0]) : []),
  ];
}
