import { useSignal } from '@preact/signals';
import { lengthFromSteps, stepFromKnownLength } from '../../../core/plan/pacing.ts';
import type { OutlineOutcome } from '../../../core/plan/room-outline.ts';
import {
  lOutline,
  manySidedOutline,
  rectangleOutline,
  roundOutline,
} from '../../../core/plan/room-shapes.ts';
import { newPlan } from '../../../shared/document/commands/change-plan.ts';
import { DEFAULT_FINISHES } from '../../../shared/document/defaults.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { LengthField } from '../../parts/length-field/index.tsx';
import { NumberField } from '../../parts/number-field/index.tsx';
import { Stepper } from '../../parts/stepper/index.tsx';
import { rememberedStep, rememberStep } from '../../session/own-step.ts';
import { measuredLabel } from '../../words/measured-label.ts';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';

type Form = 'rectangle' | 'l' | 'round' | 'sides';

const FORMS: readonly (readonly [Form, string])[] = [
  ['rectangle', 'Rectangle'],
  ['l', 'L-shape'],
  ['round', 'Round'],
  ['sides', 'Many sides'],
];
const ROOFS: readonly (readonly [Entry<'room/roof'>['kind'], string])[] = [
  ['flat', 'Flat'],
  ['ridge', 'Tent, ridge'],
  ['pyramid', 'Tent, one peak'],
];
/** Over the walls of a tent, m. */
const RISE_M = 1.5;

/** A wall that was walked along: its steps, and what they come to; and one's own step from a length that is known. */
function Paced({ units }: { units: 'metric' | 'imperial' }) {
  const steps = useSignal<number | null>(null);
  const knownM = useSignal(10);
  const stepM = useSignal(rememberedStep());
  const said = useSignal('');
  const paced = steps.value === null ? null : lengthFromSteps(steps.value, stepM.value);
  const calibrate = (count: number) => {
    const own = stepFromKnownLength(knownM.value, count);
    if ('reason' in own) said.value = own.reason;
    else {
      stepM.value = own.stepM;
      rememberStep(own.stepM);
      said.value = `Your step is ${measuredLabel(own.stepM, units)}: kept on this phone.`;
    }
  };
  const number = (name: string, value: number | null, set: (value: number) => void) => (
    <NumberField name={name} unit="" value={value} limits={{ least: 1, most: 400, decimals: 1 }} set={set} />
  );
  return (
    <details>
      <summary>Walk along a wall instead of measuring it</summary>
      {number('Steps along the wall', steps.value, (value) => {
        steps.value = value;
      })}
      {paced && (
        <p role="status">
          {'reason' in paced
            ? paced.reason
            : `${measuredLabel(paced.lengthM, units)}, give or take ${measuredLabel(paced.spreadM, units)}: type that above.`}
        </p>
      )}
      <p class="quiet">{`With your step of ${measuredLabel(stepM.value, units)}. Walk one known length to make it your own:`}</p>
      <LengthField
        name="A length that is known"
        units={units}
        valueM={knownM.value}
        leastM={2}
        mostM={200}
        set={(valueM) => {
          knownM.value = valueM;
        }}
      />
      {number('Steps along it', null, calibrate)}
      <p role="status">{said.value}</p>
    </details>
  );
}

/** A room from nothing: a shape, two numbers, a height. What was on the plan goes, and undo brings it back. */
export function BeginCard({ state }: { state: EditorState }) {
  const { doc, hand } = state.session;
  const units = state.night.value?.units ?? 'metric';
  const form = useSignal<Form>('rectangle');
  const roof = useSignal<Entry<'room/roof'>['kind']>('flat');
  const widthM = useSignal(18);
  const depthM = useSignal(12);
  const cutM = useSignal(5);
  const sides = useSignal(8);
  const ceilingM = useSignal(3.5);
  const shape = (): OutlineOutcome => {
    const [width, depth] = [widthM.value, depthM.value];
    switch (form.value) {
      case 'rectangle':
        return rectangleOutline(width, depth);
      case 'l':
        return lOutline({
          widthM: width,
          depthM: depth,
          cutWidthM: cutM.value,
          cutDepthM: cutM.value,
          corner: 'top-right',
        });
      case 'round':
        return roundOutline(width);
      case 'sides':
        return manySidedOutline(sides.value, width);
    }
  };
  const make = () => {
    const made = shape();
    if ('reason' in made) {
      state.said.value = made.reason;
      return;
    }
    const peakM = ceilingM.value + RISE_M;
    const kind = roof.value;
    const over: Entry<'room/roof'> =
      kind === 'flat'
        ? { kind }
        : kind === 'ridge'
          ? { kind, peakM, ridgeDeg: widthM.value >= depthM.value ? 90 : 0 }
          : { kind, peakM };
    state.undo.startStep();
    const room = { outline: [...made.outline], ceilingM: ceilingM.value };
    const outcome = newPlan(doc, hand, { room, roof: over, finishes: DEFAULT_FINISHES, features: [] });
    if (state.say(outcome, 'A new room. Add what stands in it; Undo brings the old one back.'))
      state.card.value = 'add';
  };
  const length = (name: string, value: typeof widthM, mostM = 300) => (
    <LengthField
      name={name}
      units={units}
      valueM={value.value}
      leastM={1}
      mostM={mostM}
      set={(valueM) => {
        value.value = valueM;
      }}
    />
  );
  return (
    <div class="editor-card">
      <Choice
        name="Shape"
        options={FORMS}
        value={form.value}
        choose={(value) => {
          form.value = value;
        }}
      />
      {length(form.value === 'rectangle' || form.value === 'l' ? 'Width' : 'Across', widthM)}
      {(form.value === 'rectangle' || form.value === 'l') && length('Depth', depthM)}
      {form.value === 'l' && length('The corner that is missing, each way', cutM)}
      {form.value === 'sides' && (
        <Stepper
          name="Sides"
          value={String(sides.value)}
          less={() => {
            sides.value = Math.max(3, sides.value - 1);
          }}
          more={() => {
            sides.value = Math.min(24, sides.value + 1);
          }}
        />
      )}
      <Choice
        name="Roof"
        options={ROOFS}
        value={roof.value}
        choose={(value) => {
          roof.value = value;
        }}
      />
      {length(roof.value === 'flat' ? 'Ceiling height' : 'Height of the walls', ceilingM, 60)}
      <Paced units={units} />
      <div class="two-keys">
        <button type="button" class="make-key" onClick={make}>
          Make this room
        </button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
