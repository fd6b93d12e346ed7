import { FingerCount, PalmsDown, PointingFigure } from '../../parts/hand-sign/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { handSignals, type LegSignal } from '../../state/hand-signals.ts';
import { armWords, stepsWords, whichWords } from '../../words/hand-words.ts';
import type { LeadState } from './lead-state.ts';
import './hand-signals.css';

/** More legs than this nobody keeps in mind across a room. */
const MOST_LEGS = 3;

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

function Leg({ leg, then }: { leg: LegSignal; then: boolean }) {
  return (
    <>
      <li>
        <span class="sign">
          <PointingFigure armDeg={leg.armDeg} />
        </span>
        <p>{then ? `Then ${lowered(armWords(leg))}` : armWords(leg)}</p>
      </li>
      <li>
        <span class="sign">
          <FingerCount count={leg.steps} />
        </span>
        <p>{stepsWords(leg.steps)}</p>
      </li>
    </>
  );
}

/** Which stand the signs are for. */
function StandChoice({ state }: { state: LeadState }) {
  const stands = state.session.night.value?.stands ?? [];
  return (
    <fieldset class="hand-stands" aria-label="Stand">
      {stands.map(({ id, kit }) => (
        <button
          key={id}
          type="button"
          aria-pressed={id === state.standId.value}
          onClick={() => {
            state.standId.value = id;
          }}
        >
          {kit.letter}
        </button>
      ))}
    </fieldset>
  );
}

/** The chosen stand's carry as three gestures: for when the other phone is lost and the room is loud. */
export function HandSignalsPanel({ state }: { state: LeadState }) {
  const [night, stand, mark] = [state.session.night.value, state.stand.value, state.mark.value];
  const close = () => {
    state.panel.value = 'none';
  };
  if (!night || !stand || !mark) return null;
  const signals = handSignals(night, stand, mark);
  return (
    <SheetPanel title={`Hand signals for ${stand.kit.letter}`} close={close}>
      <StandChoice state={state} />
      {!signals && <p>No moment is on, or the stand is at the camera: there is no way to point.</p>}
      {signals && (
        <>
          {signals.noWay && (
            <p class="elsewhere-line">{`No way there: ${signals.noWay}. In a straight line:`}</p>
          )}
          <ol class="hand-signals">
            <li>
              <span class="sign">
                <FingerCount count={signals.fingers} />
              </span>
              <p>{whichWords(signals)}</p>
            </li>
            {signals.legs.length === 0 && (
              <li>
                <span class="sign">
                  <PalmsDown />
                </span>
                <p>It stays where it is: palms down</p>
              </li>
            )}
            {signals.legs.slice(0, MOST_LEGS).map((leg, index) => (
              <Leg key={`${leg.armDeg} ${leg.steps}`} leg={leg} then={index > 0} />
            ))}
          </ol>
          {signals.legs.length > MOST_LEGS && <p>Then look here again: the way goes on.</p>}
          <p class="quiet">Agree on the signs before the doors open.</p>
        </>
      )}
    </SheetPanel>
  );
}
