import { useSignal } from '@preact/signals';
import { announceMoment, undoAnnouncement } from '../../../shared/document/commands/announce-moment.ts';
import { removeMoment, restoreMoment } from '../../../shared/document/commands/leave-out-moment.ts';
import type { Moment } from '../../../shared/document/parts.ts';
import { minutesIntoNight, type Running, runningOrder } from '../../../shared/document/running.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { everySecond } from '../../device/ticking.ts';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { ageWords } from '../../words/ages.ts';
import { personName } from '../../words/person-words.ts';
import type { LeadState } from './lead-state.ts';
import { OneMoment } from './one-moment.tsx';
import { PasteTimeline } from './paste-timeline.tsx';
import { sayDone } from './say-done.ts';

const STANDING: Record<Running['standing'], string> = {
  past: 'been',
  now: 'NOW',
  next: 'next',
  later: '',
  skipped: 'skipped',
};

/** No moment waits so long, min. */
const LATEST_MIN = 12 * 60;

/** "NOW, heard by Jo, 4 s ago", "next, 12 min late". */
function standingWords(night: Night, running: Running, nowMs: number): string {
  const { standing, isOverdue, lateMin } = running;
  // A night of another day is not overdue: it is looked at before or after.
  if (isOverdue && lateMin !== null && lateMin < LATEST_MIN)
    return `▲ ${STANDING[standing] || 'later'}, ${Math.round(lateMin)} min overdue`;
  if (standing !== 'now') return STANDING[standing];
  const last = night.announcements.findLast(({ momentId }) => momentId === running.momentId);
  if (!last) return STANDING.now;
  const heard = last.heard.map(({ personId, at }) => {
    return `heard by ${personName(night, personId)}, ${ageWords(nowMs - at)} ago`;
  });
  return `${STANDING.now}, ${heard[0] ?? 'not heard yet'}`;
}

/** Minutes since midnight of the night's day, by this phone's own clock. */
function minutesNow(night: Night, nowMs: number): number | null {
  return night.about ? minutesIntoNight(night.about.date, nowMs, -new Date(nowMs).getTimezoneOffset()) : null;
}

/** The running order: one press says "this one now" to both phones; each moment opens to be changed. */
export function OrderPanel({ state }: { state: LeadState }) {
  const { doc, hand, night, signals } = state.session;
  const opened = useSignal<string | null>(null);
  const known = night.value;
  if (!known) return null;
  const nowMs = everySecond.value + (signals.clock.value?.offsetMs ?? 0);
  const order = new Map(
    runningOrder(known, minutesNow(known, nowMs)).map((running) => [running.momentId, running]),
  );
  const announce = (moment: Moment) => {
    const outcome = announceMoment(doc, hand, moment.id);
    sayDone(state, outcome, `${moment.name} announced.`, () =>
      outcome.ok ? undoAnnouncement(doc, hand, outcome.announcementId) : outcome,
    );
  };
  return (
    <SheetPanel
      title="Running order"
      close={() => {
        state.panel.value = 'more';
      }}
    >
      <ol class="order-list">
        {known.moments.map((moment) => {
          const running = order.get(moment.id);
          const isOpen = opened.value === moment.id;
          return (
            <li key={moment.id} class={`is-${running?.standing ?? 'later'}`}>
              <button
                type="button"
                class="order-name"
                aria-expanded={isOpen}
                onClick={() => {
                  opened.value = isOpen ? null : moment.id;
                }}
              >
                <b>{moment.name}</b>
                <span>{`${moment.expected ?? 'open'} ${running ? standingWords(known, running, nowMs) : ''}`}</span>
              </button>
              <button
                type="button"
                aria-label={`${moment.name} now`}
                disabled={running?.standing === 'now'}
                onClick={() => announce(moment)}
              >
                Now
              </button>
              {isOpen && <OneMoment state={state} night={known} moment={moment} />}
            </li>
          );
        })}
      </ol>
      {known.removedMoments.length > 0 && (
        <ul class="plain-list">
          {known.removedMoments.map(({ id, name }) => (
            <li key={id} class="list-line">
              <span class="quiet">{`${name}, taken out`}</span>
              <button
                type="button"
                onClick={() =>
                  sayDone(state, restoreMoment(doc, hand, id), `${name} is back.`, () =>
                    removeMoment(doc, hand, id),
                  )
                }
              >
                Bring back
              </button>
            </li>
          ))}
        </ul>
      )}
      <PasteTimeline state={state} night={known} />
    </SheetPanel>
  );
}
