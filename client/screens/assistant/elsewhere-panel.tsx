import { useSignal } from '@preact/signals';
import { clampToRoom } from '../../../core/placing/mark.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { offBy, offsetOf, type Press, pressed } from '../../state/elsewhere.ts';
import { ELSEWHERE_NOTES, offsetWords } from '../../words/elsewhere-words.ts';
import type { Asked, AssistantState } from './assistant-state.ts';
import { CarryPlan } from './carry-plan.tsx';
import type { Way } from './way.ts';
import './elsewhere.css';

const WAYS: readonly (readonly [Press, string, string])[] = [
  ['ahead', 'Ahead', '▲'],
  ['left', 'Left', '◀'],
  ['back', 'Back', '▼'],
  ['right', 'Right', '▶'],
];

/** In which way a stand is off its mark, and how far: presses add up. */
function OffsetKeys({ stepM, add }: { stepM: number; add: (press: Press, byM: number) => void }) {
  const sizes = [
    ['10 cm', 0.1],
    ['half a step', stepM / 2],
    ['a step', stepM],
    ['two steps', stepM * 2],
  ] as const;
  const size = useSignal<number>(1);
  const byM = sizes[size.value]?.[1] ?? stepM;
  return (
    <>
      <fieldset class="offset-sizes" aria-label="How far">
        {sizes.map(([name], index) => (
          <button
            key={name}
            type="button"
            aria-pressed={index === size.value}
            onClick={() => {
              size.value = index;
            }}
          >
            {name}
          </button>
        ))}
      </fieldset>
      <div class="offset-cross">
        {WAYS.map(([press, name, sign]) => (
          <button key={press} type="button" class={`to-${press}`} onClick={() => add(press, byM)}>
            <span aria-hidden="true">{sign}</span>
            {name}
          </button>
        ))}
      </div>
    </>
  );
}

/** The stand is set, as near as could be: where it really stands, in the assistant's own sense, and why. */
export function ElsewherePanel(props: {
  state: AssistantState;
  night: Night;
  asked: Asked;
  way: Way;
  stepM: number;
}) {
  const { state, night, asked, way, stepM } = props;
  const { letter } = asked.stand.kit;
  const mark = asked.carry.current.mark;
  const spot = useSignal(mark.spot);
  const note = useSignal('');
  const facing = way.facing?.label ?? 'the plan as drawn';
  const add = (press: Press, byM: number) => {
    const wanted = offBy(spot.peek(), pressed(press, byM), way.headingDeg);
    spot.value = night.room ? clampToRoom(wanted, night.room.outline) : wanted;
  };
  const words = offsetWords(offsetOf(mark.spot, spot.value, way.headingDeg), night.units);
  const isOff = words !== 'on its mark';
  return (
    <SheetPanel
      title={`${letter} is set, but not there`}
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <div class="offset-halves">
        <div class="offset-half">
          <p class="offset-said" role="status">
            {isOff ? `${letter} stands ${words} of its mark` : `Where does ${letter} stand?`}
          </p>
          <p class="quiet">{`Seen from the mark, facing: ${facing}`}</p>
          <OffsetKeys stepM={stepM} add={add} />
        </div>
        <div class="offset-half">
          <div class="offset-plan">
            <CarryPlan night={night} asked={asked} way={way} facing={facing} real={spot.value} />
          </div>
          <fieldset class="offset-sizes">
            <legend>Because of</legend>
            {ELSEWHERE_NOTES.map((name) => (
              <button
                key={name}
                type="button"
                aria-pressed={note.value === name}
                onClick={() => {
                  note.value = note.peek() === name ? '' : name;
                }}
              >
                {name}
              </button>
            ))}
            <button
              type="button"
              disabled={!isOff}
              onClick={() => {
                spot.value = mark.spot;
              }}
            >
              Start again
            </button>
          </fieldset>
          <button
            type="button"
            class="main-key"
            disabled={!isOff}
            onClick={() =>
              state.setElsewhere(asked, { mark: { ...mark, spot: spot.peek() }, note: note.peek(), words })
            }
          >
            {isOff ? 'Set here' : 'Press how far off it is'}
          </button>
        </div>
      </div>
    </SheetPanel>
  );
}
