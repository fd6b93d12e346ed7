import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { outlineOf } from '../../../core/geometry/shape.ts';
import type { Spot } from '../../../core/geometry/spot.ts';
import { type PlanProblem, planProblems } from '../../../core/plan/plan-problem.ts';
import { type Snapped, snapSpot } from '../../../core/plan/snap.ts';
import { snapWords } from '../../../core/plan/snap-words.ts';
import {
  addFeatures,
  changeFeatures,
  removeFeatures,
  setOutline,
} from '../../../shared/document/commands/change-plan.ts';
import { moveCamera, moveSubject } from '../../../shared/document/commands/move-people.ts';
import type { Outcome } from '../../../shared/document/outcome.ts';
import type { Feature } from '../../../shared/document/parts.ts';
import { createPlanUndo, type PlanUndo } from '../../../shared/document/plan-undo.ts';
import type { Entry, FeatureKind } from '../../../shared/document/schema.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import type { NightSession } from '../../session/night-session.ts';
import { REFUSED } from '../../words/refusal-words.ts';
import { turnAlongWall } from './on-wall.ts';
import { stampOf } from './stamps.ts';

/** What a press on the floor does. */
export type Tool =
  | { readonly kind: 'pick' }
  | { readonly kind: 'stamp'; readonly feature: FeatureKind }
  | { readonly kind: 'walls' };

/** Which card lies under the plan. */
export type Card =
  | 'keys'
  | 'add'
  | 'feature'
  | 'person'
  | 'rows'
  | 'list'
  | 'walls'
  | 'begin'
  | 'import'
  | 'venues';

/** Half-metre squares: what a plan of a reception needs, and a person can pace. */
const GRID_M = 0.5;
/** How near a finger must be for something to catch it, px. */
const CATCH_PX = 16;

/** Who is on the plan besides things: both belong to the moment that is on. */
export type Person = 'camera' | 'subject';

/** What is being moved, on this phone only, until it is let go. */
export interface Moving {
  readonly spots: ReadonlyMap<string, Spot>;
  readonly outline: readonly Spot[] | null;
}

export interface EditorState {
  readonly session: NightSession;
  readonly tool: Signal<Tool>;
  readonly card: Signal<Card>;
  readonly selected: Signal<ReadonlySet<string>>;
  readonly corner: Signal<number | null>;
  readonly person: Signal<Person | null>;
  readonly moving: Signal<Moving | null>;
  /** The walls were last changed by a finger on the plan: it must not jump away from under it. */
  readonly dragged: Signal<boolean>;
  /** What the last drag was caught by, or what a press did, in words. */
  readonly said: Signal<string>;
  readonly night: ReadonlySignal<Night | null>;
  readonly chosen: ReadonlySignal<readonly Feature[]>;
  readonly problems: ReadonlySignal<readonly PlanProblem[]>;
  readonly undo: PlanUndo;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  readonly snap: (spot: Spot, pxPerM: number, except?: ReadonlySet<string>) => Snapped;
  readonly stamp: (kind: FeatureKind, spot: Spot) => void;
  readonly change: (changes: Readonly<Record<string, Partial<Entry<'feature'>>>>, text: string) => void;
  readonly copy: (features: readonly Entry<'feature'>[], text: string) => void;
  readonly remove: () => void;
  /** Undo and redo of this phone's own steps, said in words. */
  readonly takeBack: () => void;
  readonly doAgain: () => void;
  readonly commitMoving: () => void;
  readonly outline: (outline: readonly Spot[], text: string) => void;
  readonly say: (outcome: Outcome<object>, text: string) => boolean;
  /** Nothing chosen, no tool in hand, all keys. */
  readonly toKeys: () => void;
  readonly close: () => void;
}

const IN_WALLS: ReadonlySet<FeatureKind> = new Set(['door', 'exit']);
const NOTHING: ReadonlySet<string> = new Set();

/** The state behind the plan's editor: what is chosen and moved is on this phone, what is let go is in the night. */
export function createEditorState(session: NightSession): EditorState {
  const { doc, hand, night } = session;
  const tool = signal<Tool>({ kind: 'pick' });
  const card = signal<Card>('keys');
  const selected = signal<ReadonlySet<string>>(NOTHING);
  const corner = signal<number | null>(null);
  const person = signal<Person | null>(null);
  const moving = signal<Moving | null>(null);
  const dragged = signal(false);
  const said = signal('');
  const undo = createPlanUndo(doc);
  const steps = signal(0);
  const stop = undo.onChange(() => {
    steps.value++;
  });
  const say = (outcome: Outcome<object>, text: string): boolean => {
    said.value = outcome.ok ? text : REFUSED[outcome.reason];
    return outcome.ok;
  };
  const features = () => night.peek()?.features ?? [];
  // Kept between the moves of a finger: the outlines of many things are not drawn up again for each.
  const drawn = computed(() =>
    (night.value?.features ?? []).map((feature) => ({ ...feature, outline: outlineOf(feature) })),
  );
  const snap = (spot: Spot, pxPerM: number, except = NOTHING): Snapped => {
    const known = night.peek();
    if (!known?.room) return { spot, to: null };
    const snapped = snapSpot(spot, {
      outline: known.room.outline,
      features: drawn.peek().filter(({ id }) => !except.has(id)),
      gridM: GRID_M,
      radiusM: CATCH_PX / pxPerM,
    });
    said.value = snapped.to ? snapWords(snapped.to, known.units) : '';
    return snapped;
  };
  const put = (list: readonly Entry<'feature'>[], text: string) => {
    undo.startStep();
    const outcome = addFeatures(doc, hand, list);
    if (say(outcome, text) && outcome.ok) {
      selected.value = new Set(outcome.featureIds);
      card.value = 'feature';
    }
  };
  return {
    session,
    tool,
    card,
    selected,
    corner,
    person,
    moving,
    dragged,
    said,
    night,
    undo,
    snap,
    say,
    chosen: computed(() => (night.value?.features ?? []).filter(({ id }) => selected.value.has(id))),
    problems: computed(() => {
      const known = night.value;
      if (!known?.room) return [];
      return planProblems(known.room.outline, drawn.value, known.units);
    }),
    canUndo: computed(() => steps.value >= 0 && undo.canUndo()),
    canRedo: computed(() => steps.value >= 0 && undo.canRedo()),
    stamp: (kind, spot) => {
      const usual = stampOf(kind, spot, features());
      // A door lies in its wall, whichever way the wall runs.
      const turnDeg = IN_WALLS.has(kind) ? turnAlongWall(night.peek()?.room?.outline ?? [], spot) : null;
      const feature = { ...usual, turnDeg: turnDeg ?? usual.turnDeg };
      undo.startStep();
      const outcome = addFeatures(doc, hand, [feature]);
      if (say(outcome, `${feature.name} put down.`) && outcome.ok)
        selected.value = new Set(outcome.featureIds);
    },
    change: (changes, text) => {
      undo.startStep();
      say(changeFeatures(doc, hand, changes), text);
    },
    copy: put,
    remove: () => {
      const ids = [...selected.peek()];
      if (ids.length === 0) return;
      undo.startStep();
      if (
        !say(
          removeFeatures(doc, hand, ids),
          ids.length === 1
            ? 'Taken off the plan. Undo brings it back.'
            : `${ids.length} taken off. Undo brings them back.`,
        )
      )
        return;
      selected.value = NOTHING;
      card.value = 'keys';
    },
    takeBack: () => {
      said.value = undo.undo() ? 'Taken back.' : 'Nothing of yours is left to take back.';
    },
    doAgain: () => {
      said.value = undo.redo() ? 'Done again.' : 'Nothing is left to do again.';
    },
    commitMoving: () => {
      const last = moving.peek();
      moving.value = null;
      if (!last) return;
      undo.startStep();
      if (last.outline) {
        dragged.value = true;
        if (!say(setOutline(doc, hand, last.outline), 'Wall moved.')) dragged.value = false;
        return;
      }
      const momentId = night.peek()?.moment?.id ?? '';
      const [camera, subject] = [last.spots.get('camera'), last.spots.get('subject')];
      if (camera || subject) {
        if (camera) say(moveCamera(doc, hand, momentId, camera), 'Camera moved, for this moment.');
        if (subject) say(moveSubject(doc, hand, momentId, subject), 'Moved, for this moment.');
        return;
      }
      const changes = Object.fromEntries([...last.spots].map(([id, at]) => [id, { at }]));
      if (last.spots.size > 0) {
        const words = said.peek();
        say(changeFeatures(doc, hand, changes), words || 'Moved.');
      }
    },
    outline: (outline, text) => {
      undo.startStep();
      say(setOutline(doc, hand, outline), text);
    },
    toKeys: () => {
      tool.value = { kind: 'pick' };
      selected.value = NOTHING;
      corner.value = null;
      person.value = null;
      card.value = 'keys';
    },
    close: () => {
      stop();
      undo.close();
    },
  };
}
