import { useSignal } from '@preact/signals';
import type { NudgeWay } from '../../../core/guidance/camera-sense.ts';
import { DEFAULT_STEP_M } from '../../../core/guidance/steps.ts';
import type { Nudge } from '../../../shared/document/commands/nudge-carry.ts';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { turnToward } from '../../state/turn-toward.ts';
import type { LeadState } from './lead-state.ts';
import { LightStrip } from './light-strip.tsx';

const SIZES: readonly (readonly [string, number])[] = [
  ['10 cm', 0.1],
  ['half a step', DEFAULT_STEP_M / 2],
  ['a step', DEFAULT_STEP_M],
];

const WAYS: readonly (readonly [NudgeWay, string, string])[] = [
  ['farther', 'Farther', '▲'],
  ['camera-left', 'Camera-left', '◀'],
  ['camera-right', 'Camera-right', '▶'],
  ['nearer', 'Nearer', '▼'],
];

const OTHERS: readonly (readonly [string, Nudge])[] = [
  ['Up 10 cm', { kind: 'height', byM: 0.1 }],
  ['Down 10 cm', { kind: 'height', byM: -0.1 }],
  ['Power +⅓', { kind: 'power', byStops: 1 / 3 }],
  ['Power −⅓', { kind: 'power', byStops: -1 / 3 }],
  ['Tilt down 5°', { kind: 'tilt', byDeg: 5 }],
  ['Tilt up 5°', { kind: 'tilt', byDeg: -5 }],
];

/** So far an umbrella is turned by one press: less is not seen on a face. */
const TURN_DEG = 15;

/** The umbrella, or the bare head, turned so that it points more to one side of the picture. */
function TurnKeys({ state }: { state: LeadState }) {
  const [night, mark, stand] = [state.session.night.value, state.mark.value, state.stand.value];
  if (!night || !mark || !stand) return null;
  const what = stand.kit.umbrellaGear ? 'Umbrella' : 'Head';
  return (
    <>
      {(['left', 'right'] as const).map((side) => {
        const byDeg = turnToward(night, mark.facingDeg, side, TURN_DEG);
        return (
          <button
            key={side}
            type="button"
            disabled={byDeg === null}
            onClick={() => byDeg !== null && state.nudge({ kind: 'turn', byDeg })}
          >
            {`${what} ${TURN_DEG}° ${side}`}
          </button>
        );
      })}
    </>
  );
}

/** Corrections by a small step in the camera's own sense. With a draft they move the draft; without, they are sent. */
export function NudgePanel({ state }: { state: LeadState }) {
  const size = useSignal<number>(DEFAULT_STEP_M / 2);
  const letter = state.stand.value?.kit.letter ?? '';
  const what = state.draft.value ? 'Moves the draft; Call sends it.' : 'Each press is sent at once.';
  return (
    <SheetPanel
      title={`Nudge ${letter}, as the camera sees it`}
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <p class="quiet">{what}</p>
      <div class="nudge-sizes" role="radiogroup" aria-label="How far">
        {SIZES.map(([name, byM]) => (
          <label key={name} class={size.value === byM ? 'is-chosen' : ''}>
            <input
              type="radio"
              name="nudge-size"
              checked={size.value === byM}
              onChange={() => {
                size.value = byM;
              }}
            />
            {name}
          </label>
        ))}
      </div>
      <div class="nudge-cross">
        {WAYS.map(([way, name, sign]) => (
          <button
            key={way}
            type="button"
            class={`to-${way}`}
            onClick={() => state.nudge({ kind: 'move', way, byM: size.value })}
          >
            <span aria-hidden="true">{sign}</span>
            {name}
          </button>
        ))}
      </div>
      <div class="nudge-others">
        {OTHERS.map(([name, nudge]) => (
          <button key={name} type="button" onClick={() => state.nudge(nudge)}>
            {name}
          </button>
        ))}
        <TurnKeys state={state} />
      </div>
      <LightStrip state={state} />
    </SheetPanel>
  );
}
