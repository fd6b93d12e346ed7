import type { Card, EditorState } from './editor-state.ts';

const CARDS: readonly (readonly [Card, string])[] = [
  ['add', 'Add'],
  ['walls', 'Walls'],
  ['list', 'List'],
  ['begin', 'New room'],
  ['import', 'From a file'],
  ['venues', 'Venues'],
];

/** What can be done with the plan; pressing a thing on it opens that thing instead. */
export function KeysCard({ state }: { state: EditorState }) {
  const open = (card: Card) => () => {
    state.toKeys();
    state.tool.value = card === 'walls' ? { kind: 'walls' } : { kind: 'pick' };
    state.card.value = card;
  };
  return (
    <div class="editor-card card-keys">
      {CARDS.map(([card, word]) => (
        <button key={card} type="button" onClick={open(card)}>
          {word}
        </button>
      ))}
      <p class="quiet">
        Press a thing to change it, drag it to move it. Two fingers move, size and turn the plan; one moves it
        by its bare floor.
      </p>
    </div>
  );
}

/** The key that leads back to all keys; at the same place on every card. */
export function BackKey({ state }: { state: EditorState }) {
  return (
    <button type="button" class="back-key" onClick={state.toKeys}>
      Back
    </button>
  );
}
