import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { startMoment } from '../../shared/document/commands/change-moment.ts';
import { skipMoment } from '../../shared/document/commands/leave-out-moment.ts';
import { addMoment, moveMoment, renameMoment } from '../../shared/document/commands/running-order.ts';
import {
  clockMinutes,
  minutesIntoNight,
  OVERDUE_AFTER_MIN,
  runningOrder,
} from '../../shared/document/running.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { demoDocument, done } from '../support/document-night.ts';

/** Entrances 19:05 (on), first dance 19:20, toasts 20:10, cake 22:40, open dancing half past midnight. */
function evening() {
  const one = demoDocument();
  const { doc, lead } = one;
  for (const [id, expected] of [
    ['entrances', '19:05'],
    ['first-dance', '19:20'],
    ['toasts', '20:10'],
    ['cake', '22:40'],
    ['open-dancing', '00:30'],
  ] as const)
    done(renameMoment(doc, lead, id, id, expected));
  done(startMoment(doc, lead, 'entrances'));
  return one;
}

type One = ReturnType<typeof evening>;
const at = (hours: number, minutes: number) => hours * 60 + minutes;
const standings = ({ doc }: One, nowMin: number | null = at(19, 10)) =>
  runningOrder(readNight(doc), nowMin).map(({ standing }) => standing);
const overdue = ({ doc }: One, nowMin: number | null) =>
  runningOrder(readNight(doc), nowMin)
    .filter(({ isOverdue }) => isOverdue)
    .map(({ momentId }) => momentId);

describe('where the moments stand', () => {
  it('[DOC28] one is on, the first after it that is not skipped is next', () => {
    const one = evening();
    const { doc, lead } = one;
    expect(standings(one)).toEqual(['now', 'next', 'later', 'later', 'later']);
    done(startMoment(doc, lead, 'first-dance'));
    done(skipMoment(doc, lead, 'toasts'));
    expect(standings(one)).toEqual(['past', 'now', 'skipped', 'next', 'later']);
    done(startMoment(doc, lead, 'open-dancing'));
    expect(standings(one)).toEqual(['past', 'past', 'skipped', 'past', 'now']);
    done(moveMoment(doc, lead, 'cake', 'open-dancing'));
    expect(standings(one)).toEqual(['past', 'past', 'skipped', 'now', 'next']);
  });

  it('[DOC28] overdue is what is still to come more than 5 minutes after its time', () => {
    const one = evening();
    expect(OVERDUE_AFTER_MIN).toBe(5);
    expect(overdue(one, at(19, 25))).toEqual([]);
    expect(overdue(one, at(19, 25) + 0.01)).toEqual(['first-dance']);
    expect(overdue(one, at(20, 16))).toEqual(['first-dance', 'toasts']);
    done(skipMoment(one.doc, one.lead, 'toasts'));
    expect(overdue(one, at(20, 16))).toEqual(['first-dance']);
    done(startMoment(one.doc, one.lead, 'first-dance'));
    expect(overdue(one, at(20, 16))).toEqual([]);
    expect(overdue(one, at(23, 0))).toEqual(['cake']);
    expect(overdue(one, null)).toEqual([]);
  });

  it('[DOC28] after midnight is the same night when the night begins after noon', () => {
    const one = evening();
    const { doc, lead } = one;
    done(startMoment(doc, lead, 'cake'));
    expect(overdue(one, at(23, 59))).toEqual([]);
    expect(overdue(one, at(24, 35))).toEqual([]);
    expect(overdue(one, at(24, 36))).toEqual(['open-dancing']);
    const [, , , , dancing] = runningOrder(readNight(doc), at(24, 20));
    expect(dancing).toMatchObject({ expectedMin: at(24, 30), lateMin: -10, isOverdue: false });
    // A brunch begins before noon: 00:30 is then half past midnight of its own day.
    done(renameMoment(doc, lead, 'entrances', 'Brunch', '11:30'));
    expect(overdue(one, at(12, 0))).toEqual(['open-dancing']);
  });

  it('[DOC28] a moment without a time, or with words for one, is never overdue', () => {
    const one = evening();
    const { doc, lead } = one;
    const { momentId } = done(addMoment(doc, lead, 'entrances', { name: 'Grace' }));
    const found = runningOrder(readNight(doc), at(30, 0)).find((running) => running.momentId === momentId);
    expect(found).toEqual({
      momentId,
      standing: 'next',
      expectedMin: null,
      lateMin: null,
      isOverdue: false,
    });
  });

  it('[DOC28] a time is read as it is written, and nothing else is one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1439 }), (minutes) => {
        const text = `${Math.floor(minutes / 60)}`.padStart(2, '0');
        expect(clockMinutes(`${text}:${`${minutes % 60}`.padStart(2, '0')}`)).toBe(minutes);
      }),
    );
    for (const text of ['', '7:05', '24:00', '19:60', '19.05', '19:05 ', 'later', '１９:05'])
      expect(clockMinutes(text), text).toBeNull();
  });

  it('[DOC28] how far a night has got is counted from midnight of its date, where the clock on the wall shows it', () => {
    const lateMs = Date.UTC(2026, 4, 16, 22, 30);
    expect(minutesIntoNight('2026-05-16', lateMs, 0)).toBe(at(22, 30));
    expect(minutesIntoNight('2026-05-16', lateMs, 120)).toBe(at(24, 30));
    expect(minutesIntoNight('2026-05-16', lateMs, -300)).toBe(at(17, 30));
    for (const date of ['', 'Saturday', '2026-13-40', '16.05.2026'])
      expect(minutesIntoNight(date, lateMs, 0), date).toBeNull();
    expect(minutesIntoNight('2026-05-16', Number.NaN, 0)).toBeNull();
  });
});
