import * as Y from 'yjs';
import { rootOf } from './roots.ts';
import { LOCAL } from './transact.ts';

/** Undo and redo of what this phone changed on the plan: walls, roof, finishes, features. Many levels. */
export interface PlanUndo {
  /** Takes back the last step that something is left of; false where there is none. */
  undo(): boolean;
  /** Does again what was taken back last; false where there is nothing, or a new change has been made since. */
  redo(): boolean;
  canUndo(): boolean;
  canRedo(): boolean;
  /**
   * Everything up to the returned call, or up to the next `startStep`, undo or redo, is one step, however many commands
   * it is and however long it lasts: a drag. Without it each command is a step.
   */
  startStep(): () => void;
  /** Calls back after anything that may have changed `canUndo` or `canRedo`; the returned call ends that. */
  onChange(tell: () => void): () => void;
  /** Forgets all steps and lets go of the document. */
  close(): void;
}

/** Readings of the ambient light lie in the room's map, and have an undo of their own. */
const isAmbient = (key: string | null): boolean => key === 'ambient' || key?.startsWith('ambient/') === true;

/**
 * Undo for the plan on this phone. Steps are this phone's own commands since the call: what the other phone does is
 * never taken back, and a value that it has changed since stays as it changed it. A feature that this phone changed and
 * the other then removed comes back, as it was before that change, when the change is undone; a feature that this phone
 * added and the other removed stays away, and the step before is undone instead. Stands, subjects and cameras that a
 * plan has moved stay where they are. An undo has no log entry.
 */
export function createPlanUndo(doc: Y.Doc): PlanUndo {
  const room = rootOf(doc, 'room');
  const features = rootOf(doc, 'features');
  const touchesPlan = ({ changed }: Y.Transaction): boolean =>
    [...changed].some(
      ([type, keys]) =>
        Object.is(type, features) || (Object.is(type, room) && [...keys].some((key) => !isAmbient(key))),
    );
  const manager = new Y.UndoManager([room, features], {
    captureTimeout: 0,
    trackedOrigins: new Set([LOCAL]),
    captureTransaction: touchesPlan,
  });
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of [...listeners]) listener();
  };
  manager.on('stack-item-added', tell);
  manager.on('stack-cleared', tell);
  let step = 0;
  const endStep = () => {
    step += 1;
    manager.captureTimeout = 0;
    manager.stopCapturing();
  };
  /** Steps that nothing is left of go in silence, so listeners are told here and not by an event. */
  const back = (way: () => unknown): boolean => {
    endStep();
    const isDone = way() !== null;
    tell();
    return isDone;
  };
  return {
    undo: () => back(() => manager.undo()),
    redo: () => back(() => manager.redo()),
    canUndo: () => manager.canUndo(),
    canRedo: () => manager.canRedo(),
    startStep() {
      endStep();
      manager.captureTimeout = Number.POSITIVE_INFINITY;
      const own = step;
      return () => {
        if (own === step) endStep();
      };
    },
    onChange(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    close() {
      listeners.clear();
      manager.clear();
      manager.destroy();
    },
  };
}
