import { setGear } from '../../../shared/document/commands/change-gear.ts';
import type { GearItem } from '../../../shared/document/schema.ts';
import type { GearId } from '../../../shared/ids.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { LengthField } from '../../parts/length-field/index.tsx';
import { NumberField } from '../../parts/number-field/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import type { ItemOf } from '../../state/gear.ts';
import type { LeadState } from './lead-state.ts';
import { sayDone } from './say-done.ts';

type Flash = ItemOf<'head'> | ItemOf<'flash'>;
type Change<Item> = (item: Item) => void;

const MEANINGS = [
  ['printed', 'As printed'],
  ['open', 'Measured, no room'],
] as const;

/** What a head or the flash on the camera gives. */
function FlashFields({ flash, change }: { flash: Flash; change: Change<Flash> }) {
  return (
    <>
      <NumberField
        name="Guide number at ISO 100, full power"
        unit="m"
        value={flash.guideNumberM}
        limits={{ least: 1, most: 200, decimals: 1 }}
        set={(guideNumberM) => change({ ...flash, guideNumberM })}
      />
      <NumberField
        name="at zoom"
        unit="mm"
        value={flash.zoomMm}
        limits={{ least: 8, most: 400, decimals: 0 }}
        set={(zoomMm) => change({ ...flash, zoomMm })}
      />
      <Choice
        name="What this guide number means"
        options={MEANINGS}
        value={flash.guideNumberKind ?? 'printed'}
        choose={(guideNumberKind) => change({ ...flash, guideNumberKind })}
      />
      <p class="quiet">
        A printed number counts on a usual room with a light ceiling; half a stop is taken off it here, since
        this room is worked out by itself. A number measured outdoors is taken as it is. A test frame settles
        it.
      </p>
      <NumberField
        name="Recycle time at full power"
        unit="s"
        value={flash.recycleS ?? null}
        limits={{ least: 0.01, most: 120, decimals: 1 }}
        set={(recycleS) => change({ ...flash, recycleS })}
      />
      <NumberField
        name="Full-power flashes of one set of batteries"
        unit=""
        value={flash.flashesFull ?? null}
        limits={{ least: 1, most: 100000, decimals: 0 }}
        set={(flashesFull) => change({ ...flash, flashesFull })}
      />
    </>
  );
}

/** What an umbrella lets through: by shares of the light, or by a loss that was measured. */
function UmbrellaFields(props: {
  umbrella: ItemOf<'umbrella'>;
  units: 'metric' | 'imperial';
  change: Change<ItemOf<'umbrella'>>;
}) {
  const { umbrella, units, change } = props;
  const { lossStops, ...shares } = umbrella;
  const measured = lossStops !== undefined;
  return (
    <>
      <LengthField
        name="Diameter of the open rim"
        units={units}
        valueM={umbrella.diameterM}
        leastM={0.2}
        mostM={3}
        set={(diameterM) => change({ ...umbrella, diameterM })}
      />
      <Choice
        name="What it costs in light"
        options={[
          ['shares', 'Worked out'],
          ['measured', 'Measured'],
        ]}
        value={measured ? 'measured' : 'shares'}
        choose={(way) => change(way === 'measured' ? { ...umbrella, lossStops: lossStops ?? 2 } : shares)}
      />
      {measured ? (
        <NumberField
          name="Loss on the axis against the bare head"
          unit="stops"
          value={lossStops}
          limits={{ least: 0, most: 6, decimals: 2 }}
          set={(stops) => change({ ...umbrella, lossStops: stops })}
        />
      ) : (
        <NumberField
          name="Share of the head’s light that goes forward"
          unit="%"
          value={umbrella.forwardFraction * 100}
          limits={{ least: 1, most: 100, decimals: 0 }}
          set={(percent) => change({ ...umbrella, forwardFraction: percent / 100 })}
        />
      )}
      <NumberField
        name="Share that goes back into the room"
        unit="%"
        value={(umbrella.backFraction ?? 0.35) * 100}
        limits={{ least: 0, most: Math.floor(100 - umbrella.forwardFraction * 100), decimals: 0 }}
        set={(percent) => change({ ...umbrella, backFraction: percent / 100 })}
      />
    </>
  );
}

/** What the bounce card costs, and how much passes it upward. */
function CardFields({ card, change }: { card: ItemOf<'card'>; change: Change<ItemOf<'card'>> }) {
  return (
    <>
      <NumberField
        name="Loss toward the subject"
        unit="stops"
        value={card.lossStops}
        limits={{ least: 0, most: 6, decimals: 2 }}
        set={(lossStops) => change({ ...card, lossStops })}
      />
      <NumberField
        name="Share that goes up to the ceiling"
        unit="%"
        value={card.upFraction * 100}
        limits={{ least: 0, most: 100, decimals: 0 }}
        set={(percent) => change({ ...card, upFraction: percent / 100 })}
      />
    </>
  );
}

function Fields(props: { gear: GearItem; units: 'metric' | 'imperial'; change: Change<GearItem> }) {
  const { gear, units, change } = props;
  switch (gear.kind) {
    case 'head':
    case 'flash':
      return <FlashFields flash={gear} change={change} />;
    case 'umbrella':
      return <UmbrellaFields umbrella={gear} units={units} change={change} />;
    case 'card':
      return <CardFields card={gear} change={change} />;
    case 'stand':
      return null;
  }
}

/** What the lights of the night are, as far as the light follows from it. */
export function GearPanel({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const known = night.value;
  if (!known) return null;
  const change = (id: GearId, was: GearItem) => (next: GearItem) =>
    sayDone(state, setGear(doc, hand, id, next), `${next.name} changed.`, () => setGear(doc, hand, id, was));
  const lights = [...known.gear].filter(([, gear]) => gear.kind !== 'stand');
  return (
    <SheetPanel
      title="Heads and modifiers"
      close={() => {
        state.panel.value = state.panelBehind.value;
      }}
    >
      {lights.length === 0 && <p>The gear list holds no heads yet.</p>}
      {lights.map(([id, gear]) => (
        <section key={id} class="gear-item" aria-label={gear.name}>
          <h3>{gear.name}</h3>
          <Fields gear={gear} units={known.units} change={change(id, gear)} />
        </section>
      ))}
    </SheetPanel>
  );
}
