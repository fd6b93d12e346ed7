import { useSignal } from '@preact/signals';
import { stopsFromMeter } from '../../../core/light/fit/observed.ts';
import { removeTestFrame, restoreTestFrame } from '../../../shared/document/commands/test-frame.ts';
import type { TestFrame } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { NumberField } from '../../parts/number-field/index.tsx';
import { PictureReader } from '../../parts/picture-reader/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { firedWords, learntWords, nextWords, overWords, takenWords } from '../../words/frame-words.ts';
import type { LeadState } from './lead-state.ts';
import { ReadinessLine } from './readiness-line.tsx';
import { recordFrame } from './record-frame.ts';
import { sayDone } from './say-done.ts';

type Source = TestFrame['source'];
type What = 'subject' | 'rim';

const SOURCES: readonly (readonly [Source, string])[] = [
  ['seen', 'On the camera'],
  ['meter', 'Flash meter'],
  ['picture', 'Picture'],
];
const WHATS: readonly (readonly [What, string])[] = [
  ['subject', 'Face'],
  ['rim', 'Rim'],
];
/** What a frame on the camera's screen can still be judged by, in thirds of a stop. */
const THIRDS = [-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6];

/** Every set of lights that one would fire by itself: each alone, all, none. */
function firings(units: readonly { id: string; letter: string }[]): [string, string][] {
  const alone = units.map(({ id, letter }): [string, string] => [id, firedWords([letter])]);
  const all: [string, string][] =
    units.length > 1 ? [['all', firedWords(units.map(({ letter }) => letter))]] : [];
  return [...alone, ...all, ['none', 'No flash']];
}

/** One press on how far over or under it came out keeps the frame. */
function SeenKeys({ record }: { record: (stops: number) => void }) {
  return (
    <fieldset class="seen-keys">
      <legend>It came out</legend>
      {THIRDS.map((thirds) => (
        <button
          key={thirds}
          type="button"
          class={thirds === 0 ? 'is-right' : ''}
          onClick={() => record(thirds / 3)}
        >
          {overWords(thirds / 3)}
        </button>
      ))}
    </fieldset>
  );
}

/** What the frames have taught, and the frames themselves, each with the way to take it out. */
function Learnt({ state, night }: { state: LeadState; night: Night }) {
  const { doc, hand } = state.session;
  const learnt = state.light.lit.value?.report.learnt ?? [];
  return (
    <>
      {night.frames.length > 0 && <h3>What they have taught</h3>}
      <ul class="plain-list">
        {night.frames.length > 0 && learnt.map((one) => <li key={one.id}>{learntWords(night, one)}</li>)}
      </ul>
      <h3>Taken</h3>
      {night.frames.length === 0 && (
        <p class="quiet">None yet. Before the first one a level may be off by a stop.</p>
      )}
      <ul class="plain-list">
        {night.frames.map((frame) => (
          <li key={frame.id} class="list-line">
            <span>{takenWords(night, frame)}</span>
            <button
              type="button"
              onClick={() =>
                sayDone(state, removeTestFrame(doc, hand, frame.id), 'Test frame taken out.', () =>
                  restoreTestFrame(doc, hand, frame.id),
                )
              }
            >
              Take out
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** A test frame in two presses: which lights fired, and how it came out. The first is pressed in already. */
export function FramesPanel({ state }: { state: LeadState }) {
  const night = state.session.night.value;
  const report = state.light.lit.value?.report ?? null;
  const chosen = useSignal<string | null>(null);
  const source = useSignal<Source>('seen');
  const chosenWhat = useSignal<What | null>(null);
  if (!night?.moment) return null;
  const units = state.units.value;
  const next = report?.next ?? null;
  const asked = next
    ? next.unitIds.length === 0
      ? 'none'
      : (next.unitIds[0] ?? 'none')
    : (units[0]?.id ?? 'none');
  const fired = chosen.value ?? asked;
  const firedIds = fired === 'all' ? units.map(({ id }) => id) : fired === 'none' ? [] : [fired];
  const job = units.find(({ id }) => id === fired)?.job;
  const what = chosenWhat.value ?? (job === 'back' ? 'rim' : 'subject');
  const record = (stops: number) => {
    const outcome = recordFrame(state, { unitIds: firedIds, source: source.value, what, stops });
    sayDone(state, outcome, `Kept: ${what === 'rim' ? 'rim' : 'face'} ${overWords(stops)}.`, () =>
      outcome.ok ? removeTestFrame(state.session.doc, state.session.hand, outcome.frameId) : outcome,
    );
    chosen.value = null;
    chosenWhat.value = null;
  };
  const { fNumber } = night.moment.exposure;
  return (
    <SheetPanel
      title="Test frames"
      close={() => {
        state.panel.value = 'light';
      }}
    >
      <ReadinessLine state={state} />
      {next && <p class="next-frame">{nextWords(night, next)}</p>}
      <Choice
        name="What fired"
        options={firings(units)}
        value={fired}
        choose={(id) => {
          chosen.value = id;
          chosenWhat.value = null;
        }}
      />
      {source.value === 'seen' && <SeenKeys record={record} />}
      {source.value === 'meter' && (
        <NumberField
          name="The meter, held where the light falls, reads f/"
          unit=""
          value={null}
          limits={{ least: 0.5, most: 90, decimals: 1 }}
          set={(read) => {
            const stops = stopsFromMeter(read, fNumber);
            if (stops !== null) record(stops);
          }}
        />
      )}
      {source.value === 'picture' && <PictureReader record={record} />}
      <Choice
        name="What it is about"
        options={WHATS}
        value={what}
        choose={(value) => {
          chosenWhat.value = value;
        }}
      />
      <Choice
        name="Read from"
        options={SOURCES}
        value={source.value}
        choose={(value) => {
          source.value = value;
        }}
      />
      <Learnt state={state} night={night} />
    </SheetPanel>
  );
}
