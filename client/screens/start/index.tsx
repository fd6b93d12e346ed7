import { facePath } from '../../../shared/messages/http.ts';
import { remembered } from '../../session/membership.ts';
import { ROLE_WORDS } from '../../words/link-words.ts';

/** The page without a code: the nights this phone is in, and how to get into one. */
export function StartPage({ trouble }: { trouble: string | null }) {
  const nights = remembered();
  return (
    <main class="page">
      <h1>Hushmark</h1>
      {trouble && <p role="alert">{trouble}</p>}
      {nights.length > 0 && (
        <>
          <h2>Nights on this phone</h2>
          <ul class="page-form">
            {nights.map((membership) => (
              <li key={`${membership.role}/${membership.night}`}>
                <a class="page-key" href={facePath(membership.role, membership.night)}>
                  {`${membership.title}, as ${ROLE_WORDS[membership.role].toLowerCase()}`}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        To join a night, scan a code with this phone’s camera: the lead’s code is shown where the server runs,
        the assistant’s code on the lead’s phone under “More”.
      </p>
    </main>
  );
}
