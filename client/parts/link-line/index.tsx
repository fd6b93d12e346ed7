import { everySecond } from '../../device/ticking.ts';
import type { NightSession } from '../../session/night-session.ts';
import { phoneLink } from '../../session/phone-link.ts';
import { otherPhoneWords, ownLinkWords, ROLE_WORDS } from '../../words/link-words.ts';
import './style.css';

const SIGN = { live: '●', weak: '◐', lost: '○' } as const;

/** The other phones of the night as last heard of. */
function OtherPhones({ session }: { session: NightSession }) {
  const now = everySecond.value;
  const others = session.signals.phones.value.filter((phone) => phone.personId !== session.me.person);
  const partner = session.me.role === 'lead' ? 'assistant' : 'lead';
  if (!others.some((phone) => phone.role === partner))
    return <span class="other-phone is-lost">{`○ no ${ROLE_WORDS[partner].toLowerCase()} yet`}</span>;
  return (
    <>
      {others.map((phone) => {
        const { link, ageMs } = phoneLink(session, phone, now);
        return (
          <span key={phone.personId} class={`other-phone is-${link}`}>
            {`${SIGN[link]} ${otherPhoneWords({ ...phone, link, ageMs })}`}
          </span>
        );
      })}
    </>
  );
}

/** The top line of a face: the other phone, and whatever stands between this one and the server. */
export function LinkLine({ session }: { session: NightSession }) {
  const { sync, keeper, unsent } = session;
  const own = ownLinkWords(sync.link.value, unsent.value, keeper.keeping.value, everySecond.value);
  const skipped = session.night.value?.skipped.length ?? 0;
  return (
    <div class="link-line">
      <p class="others">
        <OtherPhones session={session} />
      </p>
      {own && (
        <p class={`own-link is-${own.level}`} role="status">
          {own.text}
        </p>
      )}
      {skipped > 0 && (
        <p class="own-link is-note">{`${skipped} ${skipped === 1 ? 'entry' : 'entries'} of this night could not be read.`}</p>
      )}
    </div>
  );
}
