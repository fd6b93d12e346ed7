import { useState } from 'preact/hooks';
import { facePath, type Membership } from '../../../shared/messages/http.ts';
import { unlockSound } from '../../device/buzz.ts';
import { pair } from '../../session/membership.ts';
import { ASKED } from '../../words/refusal-words.ts';

/** A phone joins a night: its person gives a name and presses one key. The press also allows sound. */
export function PairPage({ secret, go }: { secret: string; go: (membership: Membership) => void }) {
  const [name, setName] = useState('');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const join = async (event: Event) => {
    event.preventDefault();
    unlockSound();
    setBusy(true);
    setTrouble(null);
    const answer = await pair(secret, name.trim() || 'Somebody');
    setBusy(false);
    if (!answer.ok) return setTrouble(ASKED[answer.reason]);
    history.replaceState(null, '', facePath(answer.value.role, answer.value.night));
    go(answer.value);
  };
  return (
    <main class="page">
      <h1>Join the night</h1>
      <form class="page-form" onSubmit={join}>
        <label>
          Your name, as the other phone shows it
          <input
            name="name"
            autocomplete="given-name"
            maxLength={40}
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {trouble && <p role="alert">{trouble}</p>}
        <button type="submit" class="main-key" disabled={busy}>
          {busy ? 'Joining …' : 'Join'}
        </button>
      </form>
      <p class="quiet">Turn the phone’s brightness down now, and let its screen stay on as long as it can.</p>
    </main>
  );
}
