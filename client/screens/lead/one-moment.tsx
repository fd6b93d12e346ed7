import {
  removeMoment,
  restoreMoment,
  skipMoment,
  unskipMoment,
} from '../../../shared/document/commands/leave-out-moment.ts';
import {
  addMoment,
  moveMoment,
  renameMoment,
  repeatMoment,
} from '../../../shared/document/commands/running-order.ts';
import type { Moment } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { TextField } from '../../parts/text-field/index.tsx';
import type { LeadState } from './lead-state.ts';
import { sayDone } from './say-done.ts';

/** Everything about one moment of the list. */
export function OneMoment({ state, night, moment }: { state: LeadState; night: Night; moment: Moment }) {
  const { doc, hand } = state.session;
  const index = night.moments.findIndex(({ id }) => id === moment.id);
  const before = night.moments[index - 2]?.id ?? null;
  const after = night.moments[index + 1]?.id;
  const rename = (name: string, expected: string | null) =>
    sayDone(state, renameMoment(doc, hand, moment.id, name, expected), 'Changed.', () =>
      renameMoment(doc, hand, moment.id, moment.name, moment.expected),
    );
  const back = index > 0 ? (night.moments[index - 1]?.id ?? null) : null;
  const move = (to: string | null) =>
    sayDone(state, moveMoment(doc, hand, moment.id, to), `${moment.name} moved.`, () =>
      moveMoment(doc, hand, moment.id, back),
    );
  return (
    <div class="one-moment">
      <TextField name="Name" value={moment.name} longest={80} set={(name) => rename(name, moment.expected)} />
      <TextField
        name="Expected, like 19:20"
        value={moment.expected ?? 'open'}
        longest={5}
        set={(time) => rename(moment.name, time === 'open' ? null : time)}
      />
      <div class="three-keys">
        <button type="button" disabled={index <= 0} onClick={() => move(before)}>
          Earlier
        </button>
        <button
          type="button"
          disabled={after === undefined}
          onClick={() => after !== undefined && move(after)}
        >
          Later
        </button>
        <button
          type="button"
          onClick={() => {
            const outcome = repeatMoment(doc, hand, moment.id);
            sayDone(state, outcome, `${moment.name} once more.`, () =>
              outcome.ok ? removeMoment(doc, hand, outcome.momentId) : outcome,
            );
          }}
        >
          Once more
        </button>
        <button
          type="button"
          onClick={() =>
            moment.skipped
              ? sayDone(state, unskipMoment(doc, hand, moment.id), 'In the order again.', () =>
                  skipMoment(doc, hand, moment.id),
                )
              : sayDone(state, skipMoment(doc, hand, moment.id), `${moment.name} skipped.`, () =>
                  unskipMoment(doc, hand, moment.id),
                )
          }
        >
          {moment.skipped ? 'Not skipped' : 'Skip'}
        </button>
        <button
          type="button"
          onClick={() =>
            sayDone(state, removeMoment(doc, hand, moment.id), `${moment.name} taken out.`, () =>
              restoreMoment(doc, hand, moment.id),
            )
          }
        >
          Take out
        </button>
        <button
          type="button"
          onClick={() => {
            const outcome = addMoment(doc, hand, moment.id, { name: 'New moment' });
            sayDone(state, outcome, 'A new one after it, set up alike.', () =>
              outcome.ok ? removeMoment(doc, hand, outcome.momentId) : outcome,
            );
          }}
        >
          Add after
        </button>
      </div>
    </div>
  );
}
