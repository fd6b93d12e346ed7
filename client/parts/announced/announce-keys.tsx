import { useState } from 'preact/hooks';
import { announceMoment, undoAnnouncement } from '../../../shared/document/commands/announce-moment.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import type { NightSession } from '../../session/night-session.ts';
import { REFUSED } from '../../words/refusal-words.ts';

/** Which moment comes now, said by the assistant: one press for each, and the way back. */
export function AnnounceKeys({ session, night }: { session: NightSession; night: Night }) {
  const { doc, hand } = session;
  const [said, setSaid] = useState<{ text: string; undo: (() => void) | null } | null>(null);
  const announce = (momentId: string, name: string) => {
    const outcome = announceMoment(doc, hand, momentId);
    if (!outcome.ok) {
      setSaid({ text: REFUSED[outcome.reason], undo: null });
      return;
    }
    setSaid({
      text: `${name} announced.`,
      undo: () => {
        undoAnnouncement(doc, hand, outcome.announcementId);
        setSaid({ text: 'Taken back.', undo: null });
      },
    });
  };
  return (
    <details>
      <summary>Announce a moment</summary>
      {said && (
        <p role="status">
          {said.text}
          {said.undo && (
            <button type="button" onClick={said.undo}>
              Undo
            </button>
          )}
        </p>
      )}
      <ul class="announce-keys">
        {night.moments
          .filter(({ skipped, id }) => !skipped && id !== night.moment?.id)
          .map(({ id, name }) => (
            <li key={id}>
              <button type="button" onClick={() => announce(id, name)}>{`${name} now`}</button>
            </li>
          ))}
      </ul>
    </details>
  );
}
