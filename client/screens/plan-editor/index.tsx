import type { ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { PlanView } from '../../parts/plan/plan-view.ts';
import type { NightSession } from '../../session/night-session.ts';
import { AddCard } from './add-card.tsx';
import { BeginCard } from './begin-card.tsx';
import { EditorPlan } from './editor-plan.tsx';
import { type Card, createEditorState, type EditorState } from './editor-state.ts';
import { FeatureCard } from './feature-card.tsx';
import { ImportCard } from './import-card.tsx';
import { KeysCard } from './keys-card.tsx';
import { ListCard } from './list-card.tsx';
import { PersonCard } from './person-card.tsx';
import { RowsCard } from './rows-card.tsx';
import { useEditorKeys } from './use-editor-keys.ts';
import { VenuesCard } from './venues-card.tsx';
import { ViewKeys } from './view-keys.tsx';
import { WallsCard } from './walls-card.tsx';
import './style.css';

const CARDS: Record<Card, ComponentType<{ state: EditorState }>> = {
  keys: KeysCard,
  add: AddCard,
  feature: FeatureCard,
  person: PersonCard,
  rows: RowsCard,
  list: ListCard,
  walls: WallsCard,
  begin: BeginCard,
  import: ImportCard,
  venues: VenuesCard,
};

const CARD_NAMES: Record<Card, string> = {
  keys: 'What can be done',
  add: 'Add',
  feature: 'What is chosen',
  person: 'Camera and couple',
  rows: 'Tables in rows',
  list: 'List',
  walls: 'Walls',
  begin: 'New room',
  import: 'From a file or photo',
  venues: 'Venues',
};

/** Undo and redo of one's own changes, and the way out; never covered by a card. */
function TopKeys({ state, done }: { state: EditorState; done: () => void }) {
  return (
    <div class="editor-keys">
      <button type="button" disabled={!state.canUndo.value} onClick={state.takeBack}>
        Undo
      </button>
      <button type="button" disabled={!state.canRedo.value} onClick={state.doAgain}>
        Redo
      </button>
      <button type="button" class="done-key" onClick={done}>
        Done
      </button>
    </div>
  );
}

/** What was done or what is wrong; on its own, so that words that change under a finger draw nothing else anew. */
function Said({ state }: { state: EditorState }) {
  const problem = state.problems.value.find(({ level }) => level === 'problem');
  return (
    <p class="editor-said" role="status">
      {state.said.value || problem?.reason || ' '}
    </p>
  );
}

/** The plan's editor: the plan on top, one card of keys below; everything it does goes by keys and list too. */
export function PlanEditor({ session, done }: { session: NightSession; done: () => void }) {
  const state = useMemo(() => createEditorState(session), [session]);
  const [view, setView] = useState<PlanView | null>(null);
  useEffect(() => state.close, [state]);
  const onKeyDown = useEditorKeys({ state, view, setView, done });
  const hand = useRef<HTMLElement>(null);
  const card = state.card.value;
  // A card that goes takes the focus with it: without one, no key of the keyboard would reach the editor.
  useLayoutEffect(() => {
    if (!hand.current?.closest('main')?.contains(document.activeElement)) hand.current?.focus();
  }, [card]);
  const Shown = CARDS[card];
  return (
    <main class="plan-editor" onKeyDown={onKeyDown}>
      <h1 class="said-only">Plan of the room</h1>
      <TopKeys state={state} done={done} />
      <ViewKeys view={view} setView={setView} />
      <EditorPlan state={state} view={view} setView={setView} />
      <section class="editor-hand" ref={hand} tabIndex={-1} aria-label={CARD_NAMES[card]}>
        <Said state={state} />
        <Shown state={state} />
      </section>
    </main>
  );
}
