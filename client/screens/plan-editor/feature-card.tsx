import { outlineOf } from '../../../core/geometry/shape.ts';
import { type AlignBy, aligned, evenlySpaced } from '../../../core/plan/arrange.ts';
import { duplicateSpots } from '../../../core/plan/table-rows.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { LengthField } from '../../parts/length-field/index.tsx';
import { TextField } from '../../parts/text-field/index.tsx';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { MoveKeys } from './move-keys.tsx';
import { turnChosen } from './shift-chosen.ts';
import { freshName } from './stamps.ts';

type Change = (change: Partial<Entry<'feature'>>, text: string) => void;

const ALIGNS: readonly (readonly [AlignBy, string])[] = [
  ['left', 'Left edges'],
  ['middle-down', 'Middles, one above the other'],
  ['top', 'Top edges'],
  ['middle-across', 'Middles, side by side'],
];

/** Size and height of one thing. */
function SizeFields({
  feature,
  units,
  change,
}: {
  feature: Feature;
  units: 'metric' | 'imperial';
  change: Change;
}) {
  const { shape } = feature;
  const field = (name: string, valueM: number, set: (valueM: number) => void) => (
    <LengthField name={name} units={units} valueM={valueM} leastM={0.05} mostM={100} set={set} />
  );
  return (
    <>
      {shape.kind === 'box' &&
        field('Width', shape.widthM, (widthM) => change({ shape: { ...shape, widthM } }, 'Width changed.'))}
      {shape.kind === 'box' &&
        field('Depth', shape.depthM, (depthM) => change({ shape: { ...shape, depthM } }, 'Depth changed.'))}
      {shape.kind === 'round' &&
        field('Diameter', shape.radiusM * 2, (diameterM) =>
          change({ shape: { ...shape, radiusM: diameterM / 2 } }, 'Diameter changed.'),
        )}
      <LengthField
        name="Height"
        units={units}
        valueM={feature.heightM}
        leastM={0}
        mostM={60}
        set={(heightM) => change({ heightM }, 'Height changed.')}
      />
    </>
  );
}

const yesNo = [
  ['yes', 'Yes'],
  ['no', 'No'],
] as const;

/** What one thing is: its name, its size, and what it means for light, ways and the picture. */
function OneThing({ state, feature }: { state: EditorState; feature: Feature }) {
  const change: Change = (next, text) => state.change({ [feature.id]: next }, text);
  const flag = (name: string, key: 'blocksLight' | 'blocksWalking' | 'chairs') => (
    <Choice
      name={name}
      options={yesNo}
      value={feature[key] ? 'yes' : 'no'}
      choose={(value) => change({ [key]: value === 'yes' }, `${name}: ${value}.`)}
    />
  );
  return (
    <>
      <TextField
        name="Name"
        value={feature.name}
        longest={80}
        set={(name) => change({ name }, `Now called ${name}.`)}
      />
      <SizeFields feature={feature} units={state.night.value?.units ?? 'metric'} change={change} />
      {flag('Stops people', 'blocksWalking')}
      {flag('Stops light', 'blocksLight')}
      {flag('Chairs around it', 'chairs')}
      <Choice
        name="Behind the couple"
        options={[
          ['wanted', 'Wanted'],
          ['neither', 'Either way'],
          ['unwanted', 'Not wanted'],
        ]}
        value={feature.background}
        choose={(background) => change({ background }, 'Changed.')}
      />
    </>
  );
}

/** What can be done with several things at once. */
function Several({ state, features }: { state: EditorState; features: readonly Feature[] }) {
  const drawn = features.map((feature) => ({ ...feature, outline: outlineOf(feature) }));
  const move = (moved: readonly { id: string; at: Feature['at'] }[], text: string) =>
    state.change(Object.fromEntries(moved.map(({ id, at }) => [id, { at }])), text);
  return (
    <fieldset class="stamp-keys">
      <legend>{`${features.length} things: bring onto one line`}</legend>
      {ALIGNS.map(([by, word]) => (
        <button key={by} type="button" onClick={() => move(aligned(drawn, by), `${word} on one line.`)}>
          {word}
        </button>
      ))}
      <button
        type="button"
        onClick={() => move(evenlySpaced(drawn, 'across'), 'Equal gaps from left to right.')}
      >
        Equal gaps across
      </button>
      <button
        type="button"
        onClick={() => move(evenlySpaced(drawn, 'down'), 'Equal gaps from top to bottom.')}
      >
        Equal gaps down
      </button>
    </fieldset>
  );
}

/** The thing or things that are chosen: everything about them by keys, so that dragging is never needed. */
export function FeatureCard({ state }: { state: EditorState }) {
  const features = state.chosen.value;
  const [first] = features;
  const duplicate = () => {
    const taken = [...(state.night.peek()?.features ?? [])];
    const copies = features.flatMap((feature): Entry<'feature'>[] => {
      const spots = duplicateSpots(
        { ...feature, outline: outlineOf(feature) },
        { rows: 1, columns: 2, gapM: 0.5 },
      );
      if ('reason' in spots) return [];
      const { id: _id, ...rest } = feature;
      return spots.spots.map((at) => {
        const copy = { ...rest, at, name: freshName(feature.name.replace(/ \d+$/, ''), taken) };
        taken.push({ ...copy, id: feature.id });
        return copy;
      });
    });
    state.copy(copies, copies.length === 1 ? 'One more, beside it.' : `${copies.length} more.`);
  };
  return (
    <div class="editor-card">
      {!first && <p>Nothing is chosen: press a thing on the plan or in the list.</p>}
      {first &&
        (features.length === 1 ? (
          <OneThing state={state} feature={first} />
        ) : (
          <Several state={state} features={features} />
        ))}
      {first && <MoveKeys state={state} />}
      <div class="foot-keys">
        <button type="button" disabled={!first} onClick={() => turnChosen(state, 15)}>
          Turn 15°
        </button>
        <button type="button" disabled={!first} onClick={duplicate}>
          One more
        </button>
        <button type="button" disabled={!first} onClick={state.remove}>
          Take off
        </button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
