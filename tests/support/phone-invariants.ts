import { type Carry, isOpen, laterRevision, toldRevisions } from '../../shared/document/carry.ts';
import { momentOrder } from '../../shared/document/moment-order.ts';
import type { Night } from '../../shared/document/snapshot.ts';

/** Which stamp must be there for a state to be shown; the other states need none. */
const NEEDS = {
  held: 'held',
  delivered: 'delivered',
  seen: 'seen',
  carrying: 'carrying',
  cant: 'cant',
} as const;

function wrongInCarry(carry: Carry, night: Night): string[] {
  const wrong: string[] = [];
  const say = (holds: boolean, what: string) => {
    if (!holds) wrong.push(`${carry.id}: ${what}`);
  };
  const { stamps } = carry.current;
  const notOlder = carry.revisions.filter((one) =>
    carry.revisions.every((other) => laterRevision(one, other) === one),
  );
  say(notOlder.length === 1 && notOlder[0] === carry.current, 'exactly one revision is current');
  say(
    (carry.state === 'set') === (stamps.set !== undefined),
    '"set" if and only if the current revision is set',
  );
  say(carry.state !== 'withdrawn' || carry.withdrawnAt !== null, 'withdrawn without a withdrawal');
  say(carry.withdrawnAt === null || !isOpen(carry), 'open in spite of a withdrawal');
  say(
    carry.withdrawnTooLate === (carry.withdrawnAt !== null && stamps.set !== undefined),
    'withdrawn too late if and only if withdrawn and set',
  );
  say(!carry.withdrawalSeen || carry.withdrawnAt !== null, 'a withdrawal seen that there is not');
  for (const [state, stamp] of Object.entries(NEEDS))
    say(carry.state !== state || stamps[stamp] !== undefined, `${state} without its stamp`);
  if (carry.state === 'held')
    say(
      !stamps.delivered && !stamps.seen && !stamps.carrying && !stamps.cant,
      'held back though it had arrived',
    );
  const rivals = night.carries.filter((other) => other !== carry && other.standId === carry.standId);
  const later = rivals.some((other) => other.at > carry.at || (other.at === carry.at && other.id > carry.id));
  say(carry.state !== 'replaced' || later, 'replaced by nothing');
  for (const revision of carry.revisions.filter(({ folds }) => folds !== undefined)) {
    const folded = carry.revisions.find(({ id }) => id === revision.folds);
    say(
      folded === undefined ||
        (folded.number === revision.number - 1 && folded.why === 'nudge' && folded.by === revision.by),
      'folds what is not the nudge before it',
    );
    say(revision.why === 'nudge' && revision.from !== undefined, 'folds without being a nudge of something');
  }
  const told = toldRevisions(carry);
  say(told.length > 0 && told.at(-1) === carry.current, 'the current revision is told');
  say(Number.isFinite(carry.since), 'since when it is so');
  return wrong;
}

/** The running order: each moment once, in order, and the next one is not the one that is on. */
function wrongInOrder({ moments, removedMoments, moment, next, announcements }: Night): string[] {
  const wrong: string[] = [];
  const ids = [...moments, ...removedMoments].map(({ id }) => id);
  if (new Set(ids).size !== ids.length) wrong.push('a moment is there twice');
  for (const [index, one] of moments.entries()) {
    const before = moments[index - 1];
    if (before && momentOrder(before, one) >= 0) wrong.push(`${one.id} is out of order`);
  }
  if (moments.length > 0 && moment === null) wrong.push('no moment is on');
  if (next && (next.skipped || next.id === moment?.id || !moments.includes(next)))
    wrong.push(`${next.id} cannot be next`);
  for (const { id, momentId } of announcements)
    if (!ids.includes(momentId)) wrong.push(`${id} announces what there is not`);
  return wrong;
}

/**
 * What must hold on every phone at every moment, however little of the night has arrived.
 *
 * @returns what does not hold, in words; empty when all is well
 */
export function wrongInNight(night: Night): string[] {
  const wrong = night.carries.flatMap((carry) => wrongInCarry(carry, night));
  for (const skipped of night.skipped)
    wrong.push(`${skipped.root} ${skipped.key} unreadable: ${skipped.reason}`);
  for (const stand of night.stands) {
    const open = night.carries.filter((carry) => carry.standId === stand.id && isOpen(carry));
    if (open.length > 1) wrong.push(`${stand.id}: ${open.length} open carries`);
  }
  return [...wrong, ...wrongInOrder(night)];
}

/** What must also hold once everything has arrived: no revision between the first and the last is missing. */
export function missingRevisions(night: Night): string[] {
  return night.carries.flatMap((carry) => {
    const numbers = new Set(carry.revisions.map(({ number }) => number));
    return numbers.size === carry.current.number ? [] : [`${carry.id}: revisions ${[...numbers]}`];
  });
}
