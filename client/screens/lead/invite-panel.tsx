import { useEffect, useState } from 'preact/hooks';
import { API, type Invite, inviteSchema } from '../../../shared/messages/http.ts';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { type Answer, ask } from '../../session/membership.ts';
import { ASKED } from '../../words/refusal-words.ts';
import type { LeadState } from './lead-state.ts';

const parseInvite = (body: unknown): Invite | null => {
  const parsed = inviteSchema.safeParse(body);
  return parsed.success ? parsed.data : null;
};

/** The QR code comes as the server drew it; as an image it can run nothing. */
const asImage = (svg: string): string => `data:image/svg+xml;utf8,${encodeURIComponent(svg)}`;

/** A code for the assistant's phone. It pairs one phone, once, within ten minutes. */
export function InvitePanel({ state }: { state: LeadState }) {
  const { me } = state.session;
  const [answer, setAnswer] = useState<Answer<Invite> | null>(null);
  const [which, setWhich] = useState(0);
  const fetchCode = () => {
    setAnswer(null);
    void ask(API.invite, parseInvite, { night: me.night, as: me.role, role: 'assistant' }).then(setAnswer);
  };
  useEffect(fetchCode, []);
  const links = answer?.ok ? answer.value.links : [];
  const link = links[which % Math.max(1, links.length)];
  return (
    <SheetPanel
      title="Code for the assistant's phone"
      close={() => {
        state.panel.value = 'more';
      }}
    >
      {!answer && <p role="status">Asking the server for a code …</p>}
      {answer && !answer.ok && <p role="alert">{ASKED[answer.reason]}</p>}
      {link && (
        <>
          <p>The assistant’s phone must be on the same Wi-Fi. It scans this with its camera.</p>
          <img class="qr" alt="Pairing code for the assistant" src={asImage(link.qr)} />
          <p class="pair-link">
            <a href={link.url}>{link.url}</a>
          </p>
          <p class="quiet">It works once, within ten minutes.</p>
        </>
      )}
      <div class="two-keys">
        <button type="button" onClick={fetchCode}>
          New code
        </button>
        {links.length > 1 && (
          <button type="button" onClick={() => setWhich(which + 1)}>
            Other address
          </button>
        )}
      </div>
    </SheetPanel>
  );
}
