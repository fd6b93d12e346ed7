import type { Asked, AssistantState } from './assistant-state.ts';

/** The keys of a card: what became of the stand. The one that is most likely next is the wide one. */
export function CardKeys({ state, asked }: { state: AssistantState; asked: Asked }) {
  const { letter } = asked.stand.kit;
  const carrying = asked.carry.state === 'carrying';
  const told = asked.carry.state === 'cant';
  const open = (panel: 'cant' | 'elsewhere') => () => {
    state.panel.value = panel;
  };
  return (
    <div class="card-keys">
      <div class="three-keys">
        <button type="button" disabled={told} onClick={open('cant')}>
          Can’t
        </button>
        {carrying || told ? (
          <button type="button" onClick={() => state.takeBack(asked, carrying ? 'carrying' : 'cant')}>
            Undo
          </button>
        ) : (
          <button type="button" onClick={() => state.set(asked)}>
            {`${letter} is set`}
          </button>
        )}
        <button type="button" class="elsewhere-key" onClick={open('elsewhere')}>
          Set, but not there
        </button>
      </div>
      <button
        type="button"
        class="main-key"
        onClick={() => (carrying ? state.set(asked) : state.carrying(asked))}
      >
        {carrying ? `${letter} is set` : `Carrying ${letter}`}
      </button>
    </div>
  );
}
