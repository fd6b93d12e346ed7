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
import type { LeadState } from './lead-state.ts';
import { LightStrip } from './light-strip.tsx';

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

/** The light sheet: the stand's numbers, the camera's settings, the room's light, and every caution for the mark. */
export function LightPanel({ state }: { state: LeadState }) {
  const letter = state.stand.value?.kit.letter ?? '';
  return (
    <SheetPanel
      title={`Light sheet, ${letter}`}
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <LightStrip state={state} />
      <ExposureSteppers state={state} />
      <AmbientStepper state={state} />
      <p class="quiet">
        Light that comes back from walls and ceiling is not in these numbers: expect a little more in a small
        pale room. A test frame has the last word.
      </p>
      <Cautions cautions={state.cautions.value} />
    </SheetPanel>
  );
}
