import { useSignal } from '@preact/signals';
import { centroidOf } from '../../../core/geometry/polygon.ts';
import { subtract } from '../../../core/geometry/spot.ts';
import { tableRows } from '../../../core/plan/table-rows.ts';
import { Choice } from '../../parts/choice/index.tsx';
import { LengthField } from '../../parts/length-field/index.tsx';
import { Stepper } from '../../parts/stepper/index.tsx';
import { measuredLabel } from '../../words/measured-label.ts';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { freshName, stampOf } from './stamps.ts';

/** Clear floor between two round tables: chairs on both sides and a way between them, m. ASSUMPTION. */
const GAP_M = 1.5;

/** Across a round table, and a long one's two sides, m: sizes that are hired most. ASSUMPTION. */
const ROUND_M = 1.8;
const LONG_M = [2.4, 0.8] as const;

/** Many tables at once, in rows, in the middle of the room; then they are dragged as one. */
export function RowsCard({ state }: { state: EditorState }) {
  const rows = useSignal(3);
  const columns = useSignal(4);
  const gapM = useSignal(GAP_M);
  const shape = useSignal<'round' | 'long'>('round');
  const night = state.night.value;
  if (!night?.room) return null;
  const units = night.units;
  const put = () => {
    const [widthM, depthM] = shape.value === 'round' ? [ROUND_M, ROUND_M] : LONG_M;
    const wanted = { rows: rows.value, columns: columns.value, gapM: gapM.value, widthM, depthM, turnDeg: 0 };
    const made = tableRows({ ...wanted, at: { x: 0, y: 0 } });
    if ('reason' in made) {
      state.said.value = made.reason;
      return;
    }
    const middle = centroidOf(night.room?.outline ?? []);
    const centre = {
      x: made.spots.reduce((sum, { x }) => sum + x, 0) / made.spots.length,
      y: made.spots.reduce((sum, { y }) => sum + y, 0) / made.spots.length,
    };
    const taken = [...night.features];
    const tables = made.spots.map((spot) => {
      const at = { x: middle.x + subtract(spot, centre).x, y: middle.y + subtract(spot, centre).y };
      const table = { ...stampOf('table', at, taken), name: freshName('Table', taken) };
      taken.push({ ...table, id: '' as never });
      return shape.value === 'round' ? table : { ...table, shape: { kind: 'box' as const, widthM, depthM } };
    });
    state.copy(tables, `${tables.length} tables put down: drag one, and all move.`);
  };
  const step = (count: typeof rows, by: number) => {
    count.value = Math.min(20, Math.max(1, count.value + by));
  };
  return (
    <div class="editor-card">
      <Choice
        name="Tables"
        options={[
          ['round', `Round, ${measuredLabel(ROUND_M, units)}`],
          ['long', `Long, ${measuredLabel(LONG_M[0], units)} by ${measuredLabel(LONG_M[1], units)}`],
        ]}
        value={shape.value}
        choose={(value) => {
          shape.value = value;
        }}
      />
      <div class="pair">
        <Stepper
          name="Rows"
          value={String(rows.value)}
          less={() => step(rows, -1)}
          more={() => step(rows, 1)}
        />
        <Stepper
          name="In each row"
          value={String(columns.value)}
          less={() => step(columns, -1)}
          more={() => step(columns, 1)}
        />
      </div>
      <LengthField
        name="Clear floor between them"
        units={units}
        valueM={gapM.value}
        leastM={0}
        mostM={10}
        set={(value) => {
          gapM.value = value;
        }}
      />
      <div class="two-keys">
        <button type="button" onClick={put}>{`Put down ${rows.value * columns.value}`}</button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
