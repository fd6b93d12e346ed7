import { distance } from '../../geometry/spot.ts';
import { finiteOrNull } from '../../units/finite.ts';
import { type Exposure, INCIDENT_C } from '../exposure.ts';
import type { Belief } from '../fit/belief.ts';
import { HIT_KINDS } from '../frame/shell.ts';
import { type Advice, adviseOnPowers } from '../powers/advice.ts';
import type { LightRow, PowerProblem, PowerTarget } from '../powers/power-targets.ts';
import { type SolvedPowers, solvePowers } from '../powers/solve-powers.ts';
import type { LightInput, LightUnit } from './light-input.ts';
import { ambientFactor, outputFactor, roomFactor, type UnitParts } from './room-fit.ts';
import type { SeenLight } from './unit-light.ts';
import type { ViewLight } from './view-light.ts';

/** Own rule: what a stop of missing each target counts; the face comes before the picture behind it. */
const WEIGHTS = { subject: 4, background: 1, rim: 1 } as const;
/** So many rays of the background are enough for its middle. */
const MOST_ROWS = 160;
/** Above this speed even the newest sensors show it; advice goes no higher. ASSUMPTION. */
const HIGHEST_ISO = 12800;

/** A unit with everything that hangs on it. */
export type LitUnit = { readonly unit: LightUnit; readonly seen: SeenLight };

/** Exposure of one lx·s, as light over correct [1/(lx·s)]. */
function scaleOf({ iso, fNumber }: Exposure): number {
  return iso / (INCIDENT_C * fNumber * fNumber);
}

function rowOf(parts: readonly UnitParts[], base: number, belief: Belief, scale: number): LightRow {
  const room = roomFactor(belief);
  return {
    perLight: parts.map(
      ({ unit, straightLuxSeconds, returnedLuxSeconds }) =>
        (straightLuxSeconds + returnedLuxSeconds * room) * outputFactor(belief, unit) * scale,
    ),
    base: base * ambientFactor(belief) * scale,
  };
}

/**
 * Rays that count as background: not the subject, and farther on the plan than it stands; at most 160, evenly
 * taken.
 *
 * @returns places of the rays in the frame
 * @source own-rule
 */
export function backgroundRays({ links, scene }: ViewLight): number[] {
  const { kinds, positions, count } = links.rays;
  const { camera, subject } = scene;
  const subjectM = distance(camera.spot, subject.spot);
  const rays: number[] = [];
  for (let ray = 0; ray < count; ray += 1) {
    const kind = kinds[ray];
    if (kind === HIT_KINDS.head || kind === HIT_KINDS.body || kind === HIT_KINDS.nothing) continue;
    const x = (positions[3 * ray] ?? 0) - camera.spot.x;
    const y = (positions[3 * ray + 1] ?? 0) - camera.spot.y;
    if (Math.hypot(x, y) > subjectM) rays.push(ray);
  }
  const step = Math.max(1, rays.length / MOST_ROWS);
  return Array.from(
    { length: Math.min(rays.length, MOST_ROWS) },
    (_, at) => rays[Math.floor(at * step)] ?? 0,
  );
}

/**
 * What every light at full power gives one ray, relative to mid-grey.
 *
 * @source iso2720
 */
export function rayParts(lit: readonly LitUnit[], ray: number): UnitParts[] {
  return lit.map(({ unit, seen }) => ({
    unit,
    straightLuxSeconds: seen.shadeStraight[ray] ?? 0,
    returnedLuxSeconds: seen.shadeReturned[ray] ?? 0,
  }));
}

/**
 * The powers that bring subject, background and rim nearest to what the lead wants, and what to do about them.
 *
 * @param subject, rim what each light gives there; rim empty without a back light
 * @returns solved powers, and the advice in the trade's order: none while a light moves, since it would be
 *   read by nobody and takes longer than all the rest
 * @source own-rule
 */
export function wantedPowers({
  input,
  view,
  lit,
  belief,
  subject,
  rim,
}: {
  readonly input: LightInput;
  readonly view: ViewLight;
  readonly lit: readonly LitUnit[];
  readonly belief: Belief;
  readonly subject: readonly UnitParts[];
  readonly rim: readonly UnitParts[];
}): { readonly powers: SolvedPowers; readonly advice: readonly Advice[] } {
  const { exposure, wish, units } = input;
  const scale = scaleOf(exposure);
  const ambient = view.ambientLux * exposure.shutterS;
  const target = (
    name: keyof typeof WEIGHTS,
    wantedStops: number,
    rows: readonly LightRow[],
  ): PowerTarget => ({
    name,
    wantedStops,
    weight: WEIGHTS[name],
    measure: name === 'background' ? 'median' : 'single',
    rows,
  });
  const behind = backgroundRays(view).map((ray) =>
    rowOf(rayParts(lit, ray), (view.ambientShade[ray] ?? 0) * exposure.shutterS, belief, scale),
  );
  const targets = [target('subject', wish.subjectStops, [rowOf(subject, ambient, belief, scale)])];
  // Without a back light nothing but the key would be left to light the background, and the face comes first.
  if (rim.length > 0) {
    if (behind.length > 0) targets.push(target('background', wish.backgroundStops, behind));
    targets.push(target('rim', wish.rimStops, [rowOf(rim, ambient, belief, scale)]));
  }
  const problem: PowerProblem = {
    lights: units.map(({ id, leastPowerStops }) => ({ id, leastPowerStops, isOff: false })),
    targets,
  };
  const powers = solvePowers(problem);
  if (input.isMoving) return { powers, advice: [] };
  const advice = adviseOnPowers({
    problem,
    solution: powers,
    exposure,
    highestIso: HIGHEST_ISO,
    lights: units.map(({ id, job, mark }) => ({
      id,
      job,
      setStops: finiteOrNull(mark.powerStops),
      distanceM: Math.hypot(distance(mark.spot, input.subject.spot), mark.heightM - input.subject.eyeM),
      falloff: null,
    })),
  });
  return { powers, advice };
}
