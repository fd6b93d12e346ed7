import { useEffect, useState } from 'preact/hooks';
import { checkedOutline } from '../../../core/plan/room-outline.ts';
import { createTrace, type Pixel } from '../../../core/plan/traced.ts';
import type { PicturePlan } from '../../import/plan-file.ts';
import { LengthField } from '../../parts/length-field/index.tsx';
import { measuredLabel } from '../../words/measured-label.ts';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { takeOutline } from './take-outline.ts';
import { TracedPicture } from './traced-picture.tsx';

const ASKS = [
  'Press one end of the longest length that you know.',
  'Press its other end.',
  'Press the corners of the room, one after the other.',
] as const;

/** A picture of a plan: two points and a length give its scale, and the corners are pressed on it. */
export function TraceCard({ state, picture }: { state: EditorState; picture: PicturePlan }) {
  const [points, setPoints] = useState<readonly Pixel[]>([]);
  const [lengthM, setLengthM] = useState<number | null>(null);
  const units = state.night.value?.units ?? 'metric';
  useEffect(() => {
    setPoints([]);
    setLengthM(null);
  }, [picture]);
  const [a, b, ...corners] = points;
  const trace = a && b && lengthM !== null ? createTrace({ a, b, lengthM }) : null;
  const put = (at: Pixel) => {
    if (points.length < 2 || lengthM !== null) setPoints([...points, at]);
  };
  const take = () => {
    if (!trace || 'reason' in trace) return;
    const traced = corners.map((corner) => trace.toPlan(corner));
    const left = Math.min(...traced.map(({ x }) => x));
    const top = Math.min(...traced.map(({ y }) => y));
    const made = checkedOutline(traced.map(({ x, y }) => ({ x: x - left, y: y - top })));
    if ('reason' in made) {
      state.said.value = made.reason;
      return;
    }
    const outcome = takeOutline(state, made.outline, []);
    if (state.say(outcome, 'The traced room. Add what stands in it; Undo brings the old one back.'))
      state.card.value = 'add';
  };
  return (
    <>
      <p role="status">
        {points.length >= 2 && lengthM === null
          ? 'How long is that in the room?'
          : ASKS[Math.min(points.length, 2)]}
      </p>
      {points.length >= 2 && (
        <LengthField
          name="Its length in the room"
          units={units}
          valueM={lengthM}
          leastM={0.5}
          mostM={300}
          set={setLengthM}
        />
      )}
      {trace && 'reason' in trace && <p role="alert">{trace.reason}</p>}
      {trace && !('reason' in trace) && (
        <p class="quiet">
          {`Lengths on this plan may be off by ${(trace.errorFraction * 100).toFixed(1)} %, ` +
            `${measuredLabel(10 * trace.errorFraction, units)} in 10 m.` +
            (trace.advice === 'longer-line' ? ' A longer length would make it better.' : '')}
        </p>
      )}
      <TracedPicture picture={picture} points={points} put={put} />
      <div class="foot-keys">
        <button type="button" disabled={points.length === 0} onClick={() => setPoints(points.slice(0, -1))}>
          Last point off
        </button>
        <button type="button" disabled={corners.length < 3 || !trace || 'reason' in trace} onClick={take}>
          Use these corners
        </button>
        <BackKey state={state} />
      </div>
    </>
  );
}
