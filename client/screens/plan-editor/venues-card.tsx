import { useEffect, useState } from 'preact/hooks';
import type { VenueSummary } from '../../../shared/messages/http.ts';
import { parseVenue, useVenue as takeVenue, venueOf } from '../../../shared/venue/venue-file.ts';
import { FileKey } from '../../parts/file-key/index.tsx';
import { TextField } from '../../parts/text-field/index.tsx';
import type { Answer } from '../../session/membership.ts';
import {
  type Asker,
  listVenues,
  readVenue,
  removeVenue,
  renameVenue,
  restoreVenue,
  saveVenue,
} from '../../session/venues.ts';
import { ASKED } from '../../words/refusal-words.ts';
import type { EditorState } from './editor-state.ts';
import { BackKey } from './keys-card.tsx';

/** Hands a text to the phone as a file of its own. */
function download(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

const fileName = (venue: string): string =>
  `${venue.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}.hushmark-venue.json`;

/** The library's list as this phone last heard it, and what may be done with it. */
function useLibrary(state: EditorState, asker: Asker) {
  const [venues, setVenues] = useState<readonly VenueSummary[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const look = () =>
    void listVenues(asker).then((answer) => {
      setTrouble(answer.ok ? null : ASKED[answer.reason]);
      if (answer.ok) setVenues(answer.value);
    });
  useEffect(look, []);
  const act = async (asked: Promise<Answer<unknown>>, text: string) => {
    const answer = await asked;
    state.said.value = answer.ok ? text : ASKED[answer.reason];
    look();
  };
  return { venues, trouble, act };
}

type Library = ReturnType<typeof useLibrary>;

/** One room of the library; a removed one only offers to come back. */
function VenueLine({
  state,
  asker,
  library,
  venue,
}: {
  state: EditorState;
  asker: Asker;
  library: Library;
  venue: VenueSummary;
}) {
  const { doc, hand } = state.session;
  const use = async () => {
    const answer = await readVenue(asker, venue.id);
    if (!answer.ok) {
      state.said.value = ASKED[answer.reason];
      return;
    }
    state.undo.startStep();
    state.say(
      takeVenue(doc, hand, answer.value),
      `${venue.name} is this night’s room. Undo brings the old one back.`,
    );
  };
  if (venue.removedAt !== null)
    return (
      <li class="list-line">
        <span class="quiet">{`${venue.name}, removed`}</span>
        <button
          type="button"
          onClick={() => void library.act(restoreVenue(asker, venue.id), `${venue.name} is back.`)}
        >
          Bring back
        </button>
      </li>
    );
  return (
    <li class="venue-line">
      <TextField
        name="Name"
        value={venue.name}
        longest={80}
        set={(name) => void library.act(renameVenue(asker, venue.id, name), `Now called ${name}.`)}
      />
      <div class="two-keys">
        <button type="button" aria-label={`Use ${venue.name}`} onClick={() => void use()}>
          Use
        </button>
        <button
          type="button"
          aria-label={`Remove ${venue.name}`}
          onClick={() =>
            void library.act(removeVenue(asker, venue.id), `${venue.name} removed: it can be brought back.`)
          }
        >
          Remove
        </button>
      </div>
    </li>
  );
}

/** Rooms kept on the server for other nights, and rooms as files. */
export function VenuesCard({ state }: { state: EditorState }) {
  const { me, doc, hand } = state.session;
  const asker: Asker = { night: me.night, role: me.role };
  const library = useLibrary(state, asker);
  const night = state.night.value;
  const [name, setName] = useState(night?.about?.title ?? 'This room');
  const asFile = () => (night ? venueOf(night, name, hand.now()) : null);
  const save = () => {
    const made = asFile();
    if (!made) return;
    if (made.ok)
      void library.act(saveVenue(asker, hand.newId(), made.venue), `${name} is kept on the server.`);
    else state.said.value = made.reason;
  };
  const out = () => {
    const made = asFile();
    if (made?.ok) download(fileName(name), JSON.stringify(made.venue, null, 1));
    else if (made) state.said.value = made.reason;
  };
  const take = async (file: File) => {
    const read = parseVenue(await file.text());
    if (!read.ok) {
      state.said.value = `“${file.name}” is not taken: ${read.reason}`;
      return;
    }
    state.undo.startStep();
    state.say(
      takeVenue(doc, hand, read.venue),
      `${read.venue.name} is this night’s room. Undo brings the old one back.`,
    );
  };
  return (
    <div class="editor-card">
      <TextField name="Keep this room as" value={name} longest={80} set={setName} />
      <div class="two-keys">
        <button type="button" onClick={save}>
          Keep it
        </button>
        <button type="button" onClick={out}>
          Save as a file
        </button>
      </div>
      <FileKey
        word="Take a room from a file"
        accept=".json,application/json"
        take={(file) => void take(file)}
      />
      <h2>Kept rooms</h2>
      {library.trouble && <p role="alert">{library.trouble}</p>}
      {!library.venues && !library.trouble && <p role="status">Asking the server …</p>}
      {library.venues?.length === 0 && (
        <p class="quiet">None yet. A room that is kept can be used for another night.</p>
      )}
      <ul class="plain-list">
        {library.venues?.map((venue) => (
          <VenueLine key={venue.id} state={state} asker={asker} library={library} venue={venue} />
        ))}
      </ul>
      <BackKey state={state} />
    </div>
  );
}
