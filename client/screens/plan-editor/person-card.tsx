import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';
import { MoveKeys } from './move-keys.tsx';

/** The camera or the couple of the moment that is on: where they are in it. */
export function PersonCard({ state }: { state: EditorState }) {
  const moment = state.night.value?.moment;
  const { person } = state;
  return (
    <div class="editor-card">
      <p>
        {person.value && moment?.view
          ? `${person.value === 'camera' ? 'The camera' : moment.view.subject.name} in ${moment.name}; other moments keep their own.`
          : 'No moment is on.'}
      </p>
      <MoveKeys state={state} />
      <BackKey state={state} />
    </div>
  );
}
