import type { Spot } from '../../../core/geometry/spot.ts';
import { measuredLabel } from '../../words/measured-label.ts';
import type { EditorState, Person } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';

/** Everything on the plan by name; several can be chosen at once. The plan is a picture of this list. */
export function ListCard({ state }: { state: EditorState }) {
  const night = state.night.value;
  if (!night) return null;
  const selected = state.selected.value;
  const toggle = (id: string) => {
    const next = new Set(selected);
    if (!next.delete(id)) next.add(id);
    state.selected.value = next;
    state.person.value = null;
  };
  const seen = night.moment?.view;
  const people: readonly (readonly [Person, string, Spot])[] = seen
    ? [
        ['camera', 'Camera of this moment', seen.camera.spot],
        ['subject', seen.subject.name, seen.subject.spot],
      ]
    : [];
  const place = ({ x, y }: Spot) =>
    `${measuredLabel(x, night.units)} from the left, ${measuredLabel(y, night.units)} from the top`;
  const names = [...night.features].sort((a, b) =>
    a.name.localeCompare(b.name, undefined, { numeric: true }),
  );
  const notes = state.problems.value;
  return (
    <div class="editor-card">
      {names.length === 0 && <p>Nothing is on the plan yet: press Back, then Add.</p>}
      <ul class="editor-list">
        {names.map(({ id, name, at }) => (
          <li key={id}>
            <button type="button" aria-pressed={selected.has(id)} onClick={() => toggle(id)}>
              {`${name}, ${place(at)}`}
            </button>
          </li>
        ))}
        {people.map(([person, name, spot]) => (
          <li key={person}>
            <button
              type="button"
              aria-pressed={state.person.value === person}
              onClick={() => {
                state.selected.value = new Set();
                state.person.value = state.person.peek() === person ? null : person;
              }}
            >
              {`${name}, ${place(spot)}`}
            </button>
          </li>
        ))}
      </ul>
      {notes.length > 0 && (
        <ul class="plain-list" aria-label="Notes on the plan">
          {notes.map(({ id, otherId, level, reason }) => (
            <li key={`${id}:${otherId}:${reason}`} class={level === 'problem' ? 'trouble' : 'quiet'}>
              {reason}
            </li>
          ))}
        </ul>
      )}
      <div class="two-keys">
        <button
          type="button"
          disabled={selected.size === 0 && state.person.value === null}
          onClick={() => {
            state.card.value = state.person.value ? 'person' : 'feature';
          }}
        >
          {selected.size > 1 ? `Change ${selected.size}` : 'Change'}
        </button>
        <BackKey state={state} />
      </div>
    </div>
  );
}
