import { useEffect } from 'preact/hooks';
import { stampSeen } from '../../../shared/document/commands/stamp-carry.ts';
import { pageVisible } from '../../device/page-visible.ts';
import type { Asked, AssistantState } from './assistant-state.ts';

/** A card counts as seen when it has been on a visible page for so long: not at the flicker of another one. */
const SEEN_AFTER_MS = 500;

/** Tells the lead that the shown revision was drawn where a person can see it, and which mark was drawn. */
export function useSeen(state: AssistantState, asked: Asked): void {
  const { doc, hand } = state.session;
  const { carry } = asked;
  const visible = pageVisible.value;
  const done = carry.current.stamps.seen !== undefined || carry.state === 'withdrawn';
  useEffect(() => {
    if (!visible || done) return;
    const drawn = carry.current.mark;
    const timer = setTimeout(() => {
      stampSeen(doc, hand, { carryId: carry.id, revisionId: carry.current.id }, drawn);
    }, SEEN_AFTER_MS);
    return () => clearTimeout(timer);
  }, [carry.id, carry.current.id, visible, done]);
}
