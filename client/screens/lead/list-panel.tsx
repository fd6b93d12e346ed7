import { distanceToOutline } from '../../../core/geometry/polygon.ts';
import { outlineOf } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import { distance } from '../../../core/geometry/spot.ts';
import { lengthLabel } from '../../../core/units/length.ts';
import { powerLabel } from '../../../core/units/power.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { standElsewhere } from './elsewhere-line.tsx';
import type { LeadState } from './lead-state.ts';

/** The feature nearest to a spot: what a person would name the place by. */
function nearest(night: Night, spot: Spot): string {
  const ranked = night.features
    .filter((feature) => feature.kind !== 'dance-floor')
    .map((feature) => ({ name: feature.name, awayM: distanceToOutline(outlineOf(feature), spot) ?? 0 }))
    .sort((a, b) => a.awayM - b.awayM);
  const first = ranked[0];
  return first ? `${lengthLabel(first.awayM, night.units)} from ${first.name}` : 'in the room';
}

const inSentence = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);

function standLine(night: Night, stand: Stand): string {
  const { mark } = stand.place;
  const subject = night.moment?.view.subject;
  const away = subject
    ? `, ${lengthLabel(distance(mark.spot, subject.spot), night.units)} from ${inSentence(subject.name)}`
    : '';
  return (
    `${nearest(night, mark.spot)}${away}, head at ${mark.heightM.toFixed(1)} m, ` +
    `${powerLabel(mark.powerStops)}, stand ${stand.kit.letter}`
  );
}

/** The stands that were set elsewhere than called, each with how far and why. */
function ElsewhereList({ night }: { night: Night }) {
  const lines = night.stands.flatMap((stand) => standElsewhere(night, stand) ?? []);
  if (lines.length === 0) return null;
  return (
    <>
      <h3>Set elsewhere</h3>
      <ul class="plain-list">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

const ARROWS: readonly (readonly [string, number, number])[] = [
  ['Up', 0, -1],
  ['Left', -1, 0],
  ['Right', 1, 0],
  ['Down', 0, 1],
];

/** Everything the plan shows and does, as a list and keys. Names begin with what differs. */
export function ListPanel({ state }: { state: LeadState }) {
  const night = state.session.night.value;
  const mark = state.mark.value;
  const stand = state.stand.value;
  if (!night) return null;
  const move = (x: number, y: number) => {
    if (mark) state.place({ x: mark.spot.x + x, y: mark.spot.y + y });
  };
  return (
    <SheetPanel
      title="List"
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <h3>Stands</h3>
      <ul class="plain-list">
        {night.stands.map((one) => (
          <li key={one.id}>{standLine(night, one)}</li>
        ))}
      </ul>
      <ElsewhereList night={night} />
      {mark && stand && (
        <>
          <h3>{`Place ${stand.kit.letter} by keys, on the plan as drawn`}</h3>
          <p role="status">
            {`${nearest(night, mark.spot)}: ${lengthLabel(mark.spot.x, night.units)} from the left wall, ` +
              `${lengthLabel(mark.spot.y, night.units)} from the top wall`}
          </p>
          <div class="move-keys">
            {ARROWS.flatMap(([name, x, y]) => [
              <button key={`${name}-far`} type="button" onClick={() => move(x, y)}>
                {`${name} 1 m`}
              </button>,
              <button key={`${name}-near`} type="button" onClick={() => move(x * 0.1, y * 0.1)}>
                {`${name} 10 cm`}
              </button>,
            ])}
          </div>
          <button type="button" class="main-key" disabled={!state.draft.value} onClick={state.call}>
            {`Call ${stand.kit.letter}`}
          </button>
        </>
      )}
      <h3>Room</h3>
      <ul class="plain-list">
        {night.features.map((feature) => (
          <li key={feature.id}>
            {`${feature.name}${feature.background === 'unwanted' ? ', not wanted in the background' : ''}`}
          </li>
        ))}
      </ul>
    </SheetPanel>
  );
}
