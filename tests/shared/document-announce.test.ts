import { describe, expect, it } from 'vitest';
import type * as Y from 'yjs';
import { announcementClash, CLASH_WITHIN_MS, openAnnouncement } from '../../shared/document/announcement.ts';
import {
  announceMoment,
  hearAnnouncement,
  settleAnnouncement,
  undoAnnouncement,
} from '../../shared/document/commands/announce-moment.ts';
import { startMoment } from '../../shared/document/commands/change-moment.ts';
import { skipMoment } from '../../shared/document/commands/leave-out-moment.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { demoDocument, done, type Pair, phonePair, refusal } from '../support/document-night.ts';

/** Whatever is decided by who wins a tie is decided the same way on both phones, whoever wins. */
const WHO_WINS = [true, false] as const;

const onNow = (doc: Y.Doc): string | undefined => readNight(doc).moment?.id;
const openFor = (doc: Y.Doc, person: string): string | null =>
  openAnnouncement(readNight(doc), person)?.momentId ?? null;
const clashIn = (doc: Y.Doc): readonly string[] | null => {
  const clash = announcementClash(readNight(doc));
  return clash && [clash.first.momentId, clash.second.momentId];
};

/** The lead announces the toasts and, so much later, the assistant the cake, while apart; both are joined again. */
function announcedApart({
  betweenMs,
  assistantWinsTies,
}: {
  betweenMs: number;
  assistantWinsTies: boolean;
}): {
  pair: Pair;
  toasts: string;
  cake: string;
} {
  const pair = phonePair({ assistantWinsTies });
  const { network, lead, assistant, clock } = pair;
  network.cut(lead.phone);
  network.cut(assistant.phone);
  clock.pass(1000);
  const { announcementId: toasts } = done(announceMoment(lead.doc, lead.hand, 'toasts'));
  clock.pass(betweenMs);
  const { announcementId: cake } = done(announceMoment(assistant.doc, assistant.hand, 'cake'));
  network.joinAllAndDrain();
  return { pair, toasts, cake };
}

describe('an announcement', () => {
  it('[DOC29] begins the moment, and is open for the other person until they have heard', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    clock.pass(1000);
    const { announcementId } = done(announceMoment(doc, assistant, 'toasts'));
    expect(readNight(doc)).toMatchObject({
      moment: { id: 'toasts' },
      now: { momentId: 'toasts', at: clock.nowMs, by: 'assistant' },
    });
    expect(openFor(doc, 'lead')).toBe('toasts');
    expect(openFor(doc, 'assistant')).toBeNull();
    expect(refusal(hearAnnouncement(doc, assistant, announcementId))).toBe('already');
    clock.pass(4000);
    done(hearAnnouncement(doc, lead, announcementId));
    expect(openFor(doc, 'lead')).toBeNull();
    expect(readNight(doc).announcements).toMatchObject([
      { id: announcementId, by: 'assistant', heard: [{ personId: 'lead', at: clock.nowMs }] },
    ]);
    expect(refusal(hearAnnouncement(doc, lead, announcementId))).toBe('already');
  });

  it('[DOC29] said again, it is to be heard again; one that the night has gone past asks nobody', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    const { announcementId } = done(announceMoment(doc, lead, 'toasts'));
    done(hearAnnouncement(doc, assistant, announcementId));
    clock.pass(90_000);
    done(announceMoment(doc, lead, 'toasts'));
    expect(openFor(doc, 'assistant')).toBe('toasts');
    clock.pass(1000);
    done(startMoment(doc, lead, 'cake'));
    expect(openFor(doc, 'assistant')).toBeNull();
    clock.pass(1000);
    done(announceMoment(doc, lead, 'open-dancing'));
    expect(openFor(doc, 'assistant')).toBe('open-dancing');
  });

  it('[DOC29] a beginning is later than every one that its phone knows of, whatever its clock says', () => {
    const { network, lead, assistant } = phonePair({ clockErrorMs: 30_000 });
    done(announceMoment(lead.doc, lead.hand, 'toasts'));
    network.drain();
    done(startMoment(assistant.doc, assistant.hand, 'cake'));
    network.drain();
    for (const doc of network.docs) expect(onNow(doc)).toBe('cake');
  });

  it('[DOC29] of two that were made apart both are there, and the moment of the later is on', () => {
    for (const assistantWinsTies of WHO_WINS)
      for (const betweenMs of [5000, CLASH_WITHIN_MS + 1]) {
        const { pair, toasts, cake } = announcedApart({ betweenMs, assistantWinsTies });
        for (const doc of pair.network.docs) {
          expect(readNight(doc).announcements.map(({ id }) => id)).toEqual([toasts, cake]);
          expect(onNow(doc)).toBe('cake');
          expect(openFor(doc, 'lead')).toBe('cake');
        }
      }
  });

  it('[DOC29] the same said by both apart is nothing to hear for either', () => {
    const { network, lead, assistant, clock } = phonePair();
    network.cut(lead.phone);
    done(announceMoment(lead.doc, lead.hand, 'toasts'));
    clock.pass(2000);
    done(announceMoment(assistant.doc, assistant.hand, 'toasts'));
    network.joinAllAndDrain();
    for (const doc of network.docs) {
      expect(readNight(doc).announcements).toHaveLength(2);
      expect([openFor(doc, 'lead'), openFor(doc, 'assistant'), clashIn(doc)]).toEqual([null, null, null]);
    }
  });
});

describe('two announcements of different moments', () => {
  it('[DOC30] within 60 s, unheard, clash on every phone; later ones do not', () => {
    for (const assistantWinsTies of WHO_WINS)
      for (const [betweenMs, clash] of [
        [0, true],
        [CLASH_WITHIN_MS, true],
        [CLASH_WITHIN_MS + 1, false],
      ] as const) {
        const { pair } = announcedApart({ betweenMs, assistantWinsTies });
        for (const doc of pair.network.docs) {
          const found = clashIn(doc);
          expect(found === null ? null : [...found].sort()).toEqual(clash ? ['cake', 'toasts'] : null);
          expect(openFor(doc, 'assistant')).toBe(clash ? 'toasts' : null);
          expect(openFor(doc, 'lead')).toBe('cake');
        }
      }
  });

  it('[DOC30] do not clash when one was heard before the other was made, nor when they are of one person', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    const { announcementId } = done(announceMoment(doc, lead, 'toasts'));
    done(hearAnnouncement(doc, assistant, announcementId));
    clock.pass(5000);
    done(announceMoment(doc, assistant, 'cake'));
    expect(clashIn(doc)).toBeNull();
    const other = demoDocument();
    done(announceMoment(other.doc, other.lead, 'toasts'));
    done(announceMoment(other.doc, other.lead, 'cake'));
    expect(clashIn(other.doc)).toBeNull();
  });

  it('[DOC30] one press of either settles it: that moment is on, and neither is asked any more', () => {
    for (const assistantWinsTies of WHO_WINS)
      for (const chosen of ['toasts', 'cake'])
        for (const presser of ['lead', 'assistant'] as const) {
          const { pair } = announcedApart({ betweenMs: 3000, assistantWinsTies });
          const { network, clock } = pair;
          const { doc: on, hand } = pair[presser];
          expect(refusal(settleAnnouncement(on, hand, 'first-dance'))).toBe('nothing-to-settle');
          clock.pass(2000);
          done(settleAnnouncement(on, hand, chosen));
          network.drain();
          for (const doc of network.docs) {
            expect(onNow(doc)).toBe(chosen);
            expect([openFor(doc, 'lead'), openFor(doc, 'assistant'), clashIn(doc)]).toEqual([
              null,
              null,
              null,
            ]);
            const heard = readNight(doc).announcements.map((one) =>
              one.heard.map(({ personId }) => personId),
            );
            expect(heard).toEqual([['assistant'], ['lead']]);
          }
          expect(refusal(settleAnnouncement(on, hand, chosen))).toBe('nothing-to-settle');
        }
  });

  it('[DOC30] settled apart in both ways, the same moment is on for both', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const { pair } = announcedApart({ betweenMs: 3000, assistantWinsTies });
      const { network, lead, assistant } = pair;
      network.cut(lead.phone);
      done(settleAnnouncement(lead.doc, lead.hand, 'toasts'));
      done(settleAnnouncement(assistant.doc, assistant.hand, 'cake'));
      network.joinAllAndDrain();
      expect(new Set(network.docs.map(onNow)).size).toBe(1);
      for (const doc of network.docs) expect(clashIn(doc)).toBeNull();
    }
  });

  it('[DOC30] are settled too when a third moment begins, or one of them is taken back', () => {
    const { pair } = announcedApart({ betweenMs: 3000, assistantWinsTies: true });
    done(startMoment(pair.lead.doc, pair.lead.hand, 'open-dancing'));
    expect([clashIn(pair.lead.doc), openFor(pair.lead.doc, 'lead')]).toEqual([null, null]);
    for (const [taken, left] of [
      ['toasts', 'cake'],
      ['cake', 'toasts'],
    ] as const) {
      const one = announcedApart({ betweenMs: 3000, assistantWinsTies: true });
      const { doc, hand } = taken === 'toasts' ? one.pair.lead : one.pair.assistant;
      done(undoAnnouncement(doc, hand, one[taken]));
      expect([onNow(doc), clashIn(doc)]).toEqual([left, null]);
      expect(openFor(doc, left === 'cake' ? 'lead' : 'assistant')).toBe(left);
    }
  });
});

describe('an announcement that is taken back', () => {
  it('[DOC31] puts back what was on, and asks nobody any more', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    done(startMoment(doc, lead, 'first-dance'));
    done(skipMoment(doc, lead, 'cake'));
    clock.pass(1000);
    const { announcementId } = done(announceMoment(doc, lead, 'cake'));
    expect(readNight(doc).moment).toMatchObject({ id: 'cake', skipped: false });
    clock.pass(1000);
    done(undoAnnouncement(doc, assistant, announcementId));
    const night = readNight(doc);
    expect(night.moment?.id).toBe('first-dance');
    expect(night.moments.find(({ id }) => id === 'cake')?.skipped).toBe(true);
    expect(night.announcements).toEqual([]);
    expect(openFor(doc, 'assistant')).toBeNull();
    expect(refusal(undoAnnouncement(doc, lead, announcementId))).toBe('no-such-announcement');
    expect(refusal(hearAnnouncement(doc, assistant, announcementId))).toBe('no-such-announcement');
  });

  it('[DOC31] leaves on what has begun since', () => {
    const { doc, lead, clock } = demoDocument();
    const { announcementId } = done(announceMoment(doc, lead, 'toasts'));
    clock.pass(1000);
    done(startMoment(doc, lead, 'cake'));
    done(undoAnnouncement(doc, lead, announcementId));
    expect(onNow(doc)).toBe('cake');
  });

  it('[DOC31] taken back on one phone and heard on the other apart, it is taken back', () => {
    for (const assistantWinsTies of WHO_WINS) {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      done(startMoment(lead.doc, lead.hand, 'first-dance'));
      const { announcementId } = done(announceMoment(lead.doc, lead.hand, 'toasts'));
      network.drain();
      network.cut(assistant.phone);
      done(undoAnnouncement(lead.doc, lead.hand, announcementId));
      done(hearAnnouncement(assistant.doc, assistant.hand, announcementId));
      network.joinAllAndDrain();
      for (const doc of network.docs) {
        expect(onNow(doc)).toBe('first-dance');
        expect(readNight(doc).announcements).toEqual([]);
      }
    }
  });
});
