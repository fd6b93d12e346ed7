import { useEffect } from 'preact/hooks';
import { announcementClash, openAnnouncement } from '../../../shared/document/announcement.ts';
import { hearAnnouncement, settleAnnouncement } from '../../../shared/document/commands/announce-moment.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { buzz } from '../../device/buzz.ts';
import type { NightSession } from '../../session/night-session.ts';
import { personName } from '../../words/person-words.ts';
import './style.css';

/** So often a phone buzzes again until the announcement was heard, ms. */
const AGAIN_MS = 4000;

const nameOf = (night: Night, momentId: string): string =>
  night.moments.find(({ id }) => id === momentId)?.name ?? 'Another moment';
/** Buzzes now and again until there is nothing to hear. */
function useBuzz(id: string | null): void {
  useEffect(() => {
    if (id === null) return;
    buzz('newCall');
    const again = setInterval(() => buzz('newCall'), AGAIN_MS);
    return () => clearInterval(again);
  }, [id]);
}

/**
 * The other person has said which moment comes now: fills the screen until it is heard. Where both said different ones
 * without knowing of each other, both see both, and one press settles it.
 */
export function Announced({ session }: { session: NightSession }) {
  const night = session.night.value;
  const open = night && openAnnouncement(night, session.me.person);
  const clash = night && announcementClash(night);
  useBuzz(open?.id ?? null);
  if (!night || (!open && !clash)) return null;
  const { doc, hand } = session;
  if (clash)
    return (
      <div class="announced" role="alertdialog" aria-label="Two moments were announced at once">
        <p>Two moments were announced at once. Which one is it?</p>
        {[clash.first, clash.second].map(({ id, momentId, by }) => (
          <button
            key={id}
            type="button"
            class="main-key"
            onClick={() => void settleAnnouncement(doc, hand, momentId)}
          >
            {`${nameOf(night, momentId)} (${personName(night, by)})`}
          </button>
        ))}
      </div>
    );
  if (!open) return null;
  return (
    <div class="announced" role="alertdialog" aria-label={`${nameOf(night, open.momentId)} now`}>
      <p class="announced-name">{`${nameOf(night, open.momentId)} now`}</p>
      <p>{`says ${personName(night, open.by)}.`}</p>
      <button type="button" class="main-key" onClick={() => void hearAnnouncement(doc, hand, open.id)}>
        Heard
      </button>
    </div>
  );
}
