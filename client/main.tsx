import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Membership } from '../shared/messages/http.ts';
import { isRole, type Role } from '../shared/roles.ts';
import { unlockSound } from './device/buzz.ts';
import { PairPage } from './screens/pair/index.tsx';
import { StartPage } from './screens/start/index.tsx';
import { membershipFor } from './session/membership.ts';
import type { NightSession } from './session/night-session.ts';
import { ASKED } from './words/refusal-words.ts';
import './style/base.css';
import './parts/light-level/index.tsx';

type Face = (props: { session: NightSession }) => preact.JSX.Element;

type Screen =
  | { readonly kind: 'wait' }
  | { readonly kind: 'start'; readonly trouble: string | null }
  | { readonly kind: 'pair'; readonly secret: string }
  | { readonly kind: 'face'; readonly Face: Face; readonly session: NightSession };

/** Each face and what it needs is loaded only on the phone that shows it. */
async function loadFace(membership: Membership): Promise<Screen> {
  const { openNightSession } = await import('./session/night-session.ts');
  if (membership.role === 'lead') {
    const [{ LeadFace }, { holdStaleCalls }] = await Promise.all([
      import('./screens/lead/index.tsx'),
      import('./session/hold-stale.ts'),
    ]);
    const session = await openNightSession(membership);
    holdStaleCalls(session);
    return { kind: 'face', Face: LeadFace, session };
  }
  const [{ AssistantFace }, { acknowledgeCalls }] = await Promise.all([
    import('./screens/assistant/index.tsx'),
    import('./session/deliver.ts'),
  ]);
  const session = await openNightSession(membership);
  acknowledgeCalls(session);
  return { kind: 'face', Face: AssistantFace, session };
}

/** What the address asks for: a pairing link, a face, or neither. */
function addressed(): { secret: string } | { role: Role; night: string } | null {
  const secret = /^#pair=([\w-]+)$/.exec(location.hash)?.[1];
  if (secret) return { secret };
  const [, role, night] = location.pathname.split('/');
  return isRole(role) && night ? { role, night } : null;
}

async function firstScreen(): Promise<Screen> {
  const asked = addressed();
  if (!asked) return { kind: 'start', trouble: null };
  if ('secret' in asked) return { kind: 'pair', secret: asked.secret };
  const answer = await membershipFor(asked.night, asked.role);
  return answer.ok ? loadFace(answer.value) : { kind: 'start', trouble: ASKED[answer.reason] };
}

function App() {
  const [screen, setScreen] = useState<Screen>({ kind: 'wait' });
  const show = (coming: Promise<Screen>) => {
    coming.then(setScreen, (error: unknown) => {
      console.error(error);
      setScreen({
        kind: 'start',
        trouble: 'The page could not be loaded whole. Is this phone on the server’s Wi-Fi? Load it again.',
      });
    });
  };
  useEffect(() => {
    show(firstScreen());
    const again = () => show(firstScreen());
    addEventListener('hashchange', again);
    // The first touch of the night allows sound from then on.
    addEventListener('pointerdown', unlockSound, { once: true });
    return () => removeEventListener('hashchange', again);
  }, []);
  switch (screen.kind) {
    case 'wait':
      return (
        <p class="page" role="status">
          Opening …
        </p>
      );
    case 'start':
      return <StartPage trouble={screen.trouble} />;
    case 'pair':
      return <PairPage secret={screen.secret} go={(membership) => show(loadFace(membership))} />;
    case 'face':
      return <screen.Face session={screen.session} />;
  }
}

const root = document.getElementById('app');
if (root) render(<App />, root);
