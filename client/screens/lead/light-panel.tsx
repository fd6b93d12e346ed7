import type { LightReport } from '../../../core/light/report/light-report.ts';
import {
  F_NUMBERS,
  ISO_SPEEDS,
  type Nominal,
  SHUTTER_TIMES,
  stepNominal,
} from '../../../core/units/nominal.ts';
import { setAmbient, setExposure } from '../../../shared/document/commands/change-moment.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import { Cautions } from '../../parts/cautions/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { Stepper } from '../../parts/stepper/index.tsx';
import { REFUSED } from '../../words/refusal-words.ts';
import { adviceWords, missedWords, powersWords } from '../../words/report-words.ts';
import { FrameView } from './frame-view.tsx';
import type { LeadState } from './lead-state.ts';
import { LevelsTable } from './levels-table.tsx';
import { LightStrip } from './light-strip.tsx';
import { ReadinessLine } from './readiness-line.tsx';
import { CameraFlash, WishSteppers } from './wish-steppers.tsx';

const NO_BREAK = '\u00a0';

type ExposureField = keyof Entry<'moment/exposure'>;

const FIELDS: readonly (readonly [ExposureField, string, readonly Nominal[]])[] = [
  ['iso', 'ISO', ISO_SPEEDS],
  ['fNumber', 'Aperture', F_NUMBERS],
  ['shutterS', 'Shutter', SHUTTER_TIMES],
];

/** The camera's settings of the moment that is on. */
function ExposureSteppers({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const moment = night.value?.moment;
  if (!moment) return null;
  const step = (field: ExposureField, list: readonly Nominal[], by: number) => {
    const exposure = { ...moment.exposure, [field]: stepNominal(list, moment.exposure[field], by).exact };
    const outcome = setExposure(doc, hand, moment.id, exposure);
    if (!outcome.ok) state.notice.value = { text: REFUSED[outcome.reason], undo: null };
  };
  return (
    <>
      {FIELDS.map(([field, name, list]) => (
        <Stepper
          key={field}
          name={name}
          value={stepNominal(list, moment.exposure[field], 0).label}
          less={() => step(field, list, -1)}
          more={() => step(field, list, 1)}
        />
      ))}
    </>
  );
}

function AmbientStepper({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const ev = night.value?.ambientEv100 ?? null;
  const step = (by: number) => {
    const outcome = setAmbient(doc, hand, Math.round(((ev ?? 4) + by) * 3) / 3);
    if (!outcome.ok) state.notice.value = { text: REFUSED[outcome.reason], undo: null };
  };
  return (
    <Stepper
      name="Room light at the subject (EV at ISO 100)"
      value={ev === null ? 'not measured' : ev.toFixed(1)}
      less={() => step(-1 / 3)}
      more={() => step(1 / 3)}
    />
  );
}

/** A light's letter and its power stay on one line. */
const powersOnKey = (report: LightReport): string =>
  powersWords(report)
    .split(', ')
    .map((power) => power.replaceAll(' ', NO_BREAK))
    .join(', ');

/** The picture, the numbers, and what to do about them. */
function Report({ state }: { state: LeadState }) {
  const report = state.light.lit.value?.report;
  const units = state.session.night.value?.units ?? 'metric';
  if (!report) return null;
  const missed = missedWords(report);
  const advice = report.advice.map((one) => adviceWords(one, report, units));
  return (
    <>
      <FrameView report={report} />
      <h3>Powers</h3>
      {advice.length === 0 && missed.length === 0 && <p>The powers are as wanted.</p>}
      <ul class="plain-list">
        {[...advice, ...missed].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <button type="button" class="main-key take-key" onClick={state.takePowers}>
        {`Take ${powersOnKey(report)}`}
      </button>
      <LevelsTable report={report} units={units} />
    </>
  );
}

/** The light sheet: picture, numbers and powers, the camera's settings, what is wanted, and every caution. */
export function LightPanel({ state }: { state: LeadState }) {
  const letter = state.stand.value?.kit.letter ?? '';
  const to = (panel: 'frames' | 'room' | 'gear') => () => {
    state.panelBehind.value = 'light';
    state.panel.value = panel;
  };
  return (
    <SheetPanel
      title={`Light sheet, ${letter}`}
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <LightStrip state={state} />
      <ReadinessLine state={state} />
      <Report state={state} />
      <div class="three-keys">
        <button type="button" onClick={to('frames')}>
          Test frames
        </button>
        <button type="button" onClick={to('room')}>
          Room
        </button>
        <button type="button" onClick={to('gear')}>
          Heads
        </button>
      </div>
      <h3>Camera</h3>
      <ExposureSteppers state={state} />
      <CameraFlash state={state} />
      <AmbientStepper state={state} />
      <h3>Wanted</h3>
      <WishSteppers state={state} />
      <Cautions cautions={state.cautions.value} />
    </SheetPanel>
  );
}
