import type { PersonId } from '../../shared/ids.ts';
import type { HeadsUp, HeadsUpNews, HeadsUpReach } from '../../shared/messages/signals.ts';
import { otherRole, type Role } from '../../shared/roles.ts';
import type { Log } from '../logging.ts';
import type { Device } from '../store/store.ts';
import type { Time } from '../time.ts';

/** How long a phone may take to acknowledge before it is rung again. */
export const RING_AGAIN_MS = 2000;
/** How long the desk remembers a heads-up that is over, so that a late copy of it does not ring again. */
export const REMEMBER_MS = 10 * 60 * 1000;
/** So many are remembered for one night; the oldest are forgotten. */
const MOST_REMEMBERED = 500;

/** How the desk reaches phones. `rang` is called when the app of such a phone acknowledges. */
export interface Bell {
  ring(to: { night: Device['night']; role: Role }, headsUp: HeadsUp, rang: () => void): void;
  tell(night: Device['night'], person: PersonId, news: HeadsUpNews): void;
}

interface Case {
  readonly headsUp: HeadsUp;
  readonly from: Device;
  readonly takenAt: number;
  reach: HeadsUpReach;
  reachedAt: number;
  /** Ends whatever timer it waits for. */
  stop: () => void;
}

/**
 * Carries heads-ups from one phone to the other role's: rings every two seconds until the app there acknowledges
 * or the time is over, and tells the sender how far it got. Kept in memory: what a heads-up announces is in the
 * document, so a restart loses a ring and no state.
 */
export class HeadsUpDesk {
  readonly #time: Time;
  readonly #bell: Bell;
  readonly #log: Log;
  readonly #cases = new Map<string, Case>();

  constructor(deps: { time: Time; bell: Bell; log: Log }) {
    this.#time = deps.time;
    this.#bell = deps.bell;
    this.#log = deps.log;
  }

  /**
   * Takes a heads-up; gives back when it was first taken. A copy (the phone had no receipt and sent it again) rings
   * nobody a second time, and its sender hears again how far it got.
   * "not-allowed": a looker-on calls nobody, and an id belongs to the person who used it first.
   */
  take(headsUp: HeadsUp, from: Device): { at: number } | 'not-allowed' {
    if (from.role === 'looker-on') return 'not-allowed';
    const key = `${from.night}/${headsUp.id}`;
    const known = this.#cases.get(key);
    if (known && known.from.person !== from.person) return 'not-allowed';
    if (known) {
      this.#tell(known);
      return { at: known.takenAt };
    }
    const at = this.#time.now();
    const fresh: Case = {
      headsUp,
      from,
      takenAt: at,
      reach: 'taken',
      reachedAt: at,
      stop: () => undefined,
    };
    this.#cases.set(key, fresh);
    this.#forgetOldest(from.night);
    this.#reached(fresh, 'taken');
    this.#ring(fresh);
    return { at };
  }

  /** A person answered a heads-up on this phone. Only one that it was meant for counts. */
  heard(id: string, by: Device): void {
    const found = this.#cases.get(`${by.night}/${id}`);
    if (!found || found.reach === 'heard' || otherRole(found.from.role) !== by.role) return;
    this.#reached(found, 'heard');
    this.#remember(found);
  }

  /** A phone came in: what waits for it rings, and what it sent itself is reported once more. */
  arrived(device: Device): void {
    for (const known of this.#cases.values()) {
      if (known.from.night !== device.night) continue;
      if (known.from.person === device.person) this.#tell(known);
      else if (known.reach === 'taken' && otherRole(known.from.role) === device.role) this.#ring(known);
    }
  }

  close(): void {
    for (const known of this.#cases.values()) known.stop();
    this.#cases.clear();
  }

  #ring(waiting: Case): void {
    waiting.stop();
    const leftMs = waiting.headsUp.expiresAt - this.#time.now();
    if (leftMs <= 0) {
      this.#reached(waiting, 'expired');
      this.#remember(waiting);
      return;
    }
    const to = { night: waiting.from.night, role: otherRole(waiting.from.role) };
    this.#bell.ring(to, waiting.headsUp, () => this.#rang(waiting));
    waiting.stop = this.#time.after(Math.min(RING_AGAIN_MS, leftMs), () => this.#ring(waiting));
  }

  #rang(waiting: Case): void {
    if (waiting.reach !== 'taken') return; // a second phone of that role, or an answer after the end
    this.#reached(waiting, 'rang');
    this.#remember(waiting);
  }

  #remember(over: Case): void {
    over.stop();
    over.stop = this.#time.after(REMEMBER_MS, () => this.#forget(over));
  }

  #forget(over: Case): void {
    over.stop();
    this.#cases.delete(`${over.from.night}/${over.headsUp.id}`);
  }

  #forgetOldest(night: Device['night']): void {
    const ofNight = [...this.#cases.values()].filter((known) => known.from.night === night);
    if (ofNight.length > MOST_REMEMBERED && ofNight[0]) this.#forget(ofNight[0]);
  }

  #reached(found: Case, reach: HeadsUpReach): void {
    found.reach = reach;
    found.reachedAt = this.#time.now();
    const { night, role } = found.from;
    this.#log.info(
      { night, from: role, kind: found.headsUp.kind, headsUp: found.headsUp.id, reach },
      'heads-up',
    );
    this.#tell(found);
  }

  #tell(found: Case): void {
    const news: HeadsUpNews = { id: found.headsUp.id, reach: found.reach, at: found.reachedAt };
    this.#bell.tell(found.from.night, found.from.person, news);
  }
}
