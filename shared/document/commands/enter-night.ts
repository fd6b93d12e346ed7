import type * as Y from 'yjs';
import { isNewer } from '../ask.ts';
import { entryAt } from '../entries.ts';
import { type Outcome, refuse } from '../outcome.ts';
import { type Entry, entrySchemas, type Units } from '../schema.ts';
import { commit, type Hand, LOCAL } from '../transact.ts';

/** A phone's person is in the night: name, role and length of step. Does nothing when it is so already. */
export function enterNight(doc: Y.Doc, hand: Hand, person: Entry<'person'>): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas.person.safeParse(person);
  if (!checked.success) return refuse('out-of-range');
  const known = entryAt(doc, 'people', hand.person, 'person');
  const { name, role, stepM } = checked.data;
  if (known && known.name === name && known.role === role && known.stepM === stepM) return refuse('already');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('people', hand.person, checked.data);
    log(known ? 'person changed' : 'joined', hand.person, `${name}, ${role}`);
    return { ok: true };
  });
}

/** Metres or feet, for both phones. */
export function setUnits(doc: Y.Doc, hand: Hand, units: Units): Outcome {
  if (isNewer(doc)) return refuse('newer-app');
  const checked = entrySchemas['about/units'].safeParse(units);
  if (!checked.success) return refuse('out-of-range');
  return commit(doc, LOCAL, hand, ({ write, log }) => {
    write('about', 'units', checked.data);
    log('units', 'night', checked.data);
    return { ok: true };
  });
}
