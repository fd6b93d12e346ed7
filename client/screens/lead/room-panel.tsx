import { FINISHES } from '../../../core/light/room/finishes.ts';
import {
  measureAmbient,
  removeAmbient,
  restoreAmbient,
} from '../../../shared/document/commands/ambient-reading.ts';
import { setCeiling, setFinishes, setRoof } from '../../../shared/document/commands/change-room.ts';
import type { Entry } from '../../../shared/document/schema.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { LengthField } from '../../parts/length-field/index.tsx';
import { NumberField } from '../../parts/number-field/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import type { LeadState } from './lead-state.ts';
import { ReadinessLine } from './readiness-line.tsx';
import { sayDone } from './say-done.ts';

type Roof = Entry<'room/roof'>;
type Surface = 'ceiling' | 'walls' | 'floor';

const ROOFS: readonly (readonly [Roof['kind'], string])[] = [
  ['flat', 'Flat'],
  ['ridge', 'Tent, ridge'],
  ['pyramid', 'Tent, one peak'],
];
const SURFACES: readonly (readonly [Surface, string])[] = [
  ['ceiling', 'Ceiling'],
  ['walls', 'Walls'],
  ['floor', 'Floor'],
];
/** A tent rises by so much over its walls until somebody says better, m. */
const FIRST_RISE_M = 1.5;
const OWN = 'own';

/** Height of the walls and what closes the room above them. */
function RoofFields({ state, night }: { state: LeadState; night: Night }) {
  const { doc, hand } = state.session;
  const { roof, units, room } = night;
  if (!room) return null;
  const set = (next: Roof, text: string) =>
    sayDone(state, setRoof(doc, hand, next), text, () => setRoof(doc, hand, roof));
  const choose = (kind: Roof['kind']) => {
    const peakM = 'peakM' in roof ? roof.peakM : room.ceilingM + FIRST_RISE_M;
    const ridgeDeg = roof.kind === 'ridge' ? roof.ridgeDeg : 90;
    const next: Roof = { flat: { kind }, ridge: { kind, peakM, ridgeDeg }, pyramid: { kind, peakM } }[
      kind
    ] as Roof;
    set(next, `Roof: ${ROOFS.find(([known]) => known === kind)?.[1] ?? kind}.`);
  };
  return (
    <>
      <LengthField
        name={roof.kind === 'flat' ? 'Ceiling height' : 'Height of the walls'}
        units={units}
        valueM={room.ceilingM}
        leastM={1.5}
        mostM={60}
        set={(ceilingM) =>
          sayDone(state, setCeiling(doc, hand, ceilingM), 'Height changed.', () =>
            setCeiling(doc, hand, room.ceilingM),
          )
        }
      />
      <Choice name="Roof" options={ROOFS} value={roof.kind} choose={choose} />
      {roof.kind !== 'flat' && (
        <LengthField
          name="Height of the peak"
          units={units}
          valueM={roof.peakM}
          leastM={1.5}
          mostM={80}
          set={(peakM) => set({ ...roof, peakM }, 'Peak changed.')}
        />
      )}
      {roof.kind === 'ridge' && (
        <NumberField
          name="Ridge runs toward, clockwise from plan-up"
          unit="°"
          value={roof.ridgeDeg}
          limits={{ least: 0, most: 359, decimals: 0 }}
          set={(ridgeDeg) => set({ ...roof, ridgeDeg }, 'Ridge turned.')}
        />
      )}
    </>
  );
}

/** What one surface is made of: a finish by its name, or a reflectance of one's own. */
function FinishField({
  state,
  night,
  surface,
  name,
}: {
  state: LeadState;
  night: Night;
  surface: Surface;
  name: string;
}) {
  const { doc, hand } = state.session;
  const { finishes } = night;
  const set = (reflectance: number, finishName: string) => {
    const next = { ...finishes, [surface]: reflectance, [`${surface}Name`]: finishName };
    sayDone(state, setFinishes(doc, hand, next), `${name}: ${finishName}.`, () =>
      setFinishes(doc, hand, finishes),
    );
  };
  const named = FINISHES.find((finish) => finish.name === finishes[`${surface}Name`]);
  const known = named && named.reflectance === finishes[surface] ? named.name : OWN;
  return (
    <div class="finish-field">
      <label>
        {name}
        <select
          value={known}
          onChange={(event) => {
            const chosen = FINISHES.find((finish) => finish.name === event.currentTarget.value);
            if (chosen) set(chosen.reflectance, chosen.name);
          }}
        >
          {FINISHES.map((finish) => (
            <option key={finish.name} value={finish.name}>
              {`${finish.name}, ${Math.round(finish.reflectance * 100)} %`}
            </option>
          ))}
          <option value={OWN}>{finishes[`${surface}Name`] ?? 'Own value'}</option>
        </select>
      </label>
      <NumberField
        name={`${name}: light sent back`}
        unit="%"
        value={finishes[surface] * 100}
        limits={{ least: 0, most: 95, decimals: 0 }}
        set={(percent) => set(percent / 100, 'Own value')}
      />
    </div>
  );
}

/** The light that is there without flash: one reading for everywhere, and others at spots. */
function AmbientReadings({ state, night }: { state: LeadState; night: Night }) {
  const { doc, hand } = state.session;
  const subject = night.moment?.view.subject;
  const measure = (ev100: number) => {
    if (!subject) return;
    const outcome = measureAmbient(doc, hand, subject.spot, ev100);
    sayDone(state, outcome, `EV ${ev100.toFixed(1)} kept for this spot.`, () =>
      outcome.ok ? removeAmbient(doc, hand, outcome.readingId) : outcome,
    );
  };
  return (
    <>
      {subject && (
        <NumberField
          name={`Metered where ${subject.name.toLowerCase()} stands, EV at ISO 100`}
          unit="EV"
          value={night.ambientEv100}
          limits={{ least: -6, most: 16, decimals: 1 }}
          set={measure}
        />
      )}
      <ul class="plain-list">
        {night.ambientSpots.map((reading) => (
          <li key={reading.id} class="list-line">
            <span>{`EV ${reading.ev100.toFixed(1)} at ${reading.spot.x.toFixed(1)} m, ${reading.spot.y.toFixed(1)} m`}</span>
            <button
              type="button"
              onClick={() =>
                sayDone(state, removeAmbient(doc, hand, reading.id), 'Reading removed.', () =>
                  restoreAmbient(doc, hand, reading.id),
                )
              }
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What the room does to light: its height, its roof, its finishes, and the light that is in it already. */
export function RoomPanel({ state }: { state: LeadState }) {
  const night = state.session.night.value;
  if (!night) return null;
  return (
    <SheetPanel
      title="Room and its light"
      close={() => {
        state.panel.value = state.panelBehind.value;
      }}
    >
      <ReadinessLine state={state} />
      <RoofFields state={state} night={night} />
      <h3>Finishes: how much light they send back</h3>
      {SURFACES.map(([surface, name]) => (
        <FinishField key={surface} state={state} night={night} surface={surface} name={name} />
      ))}
      <h3>Light without flash</h3>
      <AmbientReadings state={state} night={night} />
    </SheetPanel>
  );
}
