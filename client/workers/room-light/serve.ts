import { type LightDesk, prepareLightDesk } from '../../../core/light/report/light-desk.ts';
import type { LightInput } from '../../../core/light/report/light-input.ts';
import { factorRoom } from '../../../core/light/room/factor-room.ts';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import { roomProblem } from '../../../core/light/room/room-problem.ts';
import { isoLines } from '../../parts/light-map/iso-lines.ts';
import type { FromRoomLight, Port, ToRoomLight } from './messages.ts';

/** Whole stops: a line for each is what can still be told apart on a phone. */
const LINES_AT = [3, 2, 1, 0, -1, -2, -3, -4];

interface Asked {
  readonly number: number;
  readonly input: LightInput;
}

/** Lets messages in between two pieces of work. */
const breathe = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/** About so much of the work is the exchange between the surfaces; the rest is the map at face height. */
const EXCHANGE_PART = 0.7;

/** Both parts of making a room ready as one, with one progress. */
function* makeReady(room: RoomModel): Generator<number, LightDesk> {
  const steps = factorRoom(room);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield step.value * EXCHANGE_PART;
  const more = prepareLightDesk(step.value);
  let last = more.next();
  for (; !last.done; last = more.next()) yield EXCHANGE_PART + last.value * (1 - EXCHANGE_PART);
  return last.value;
}

/**
 * Answers on a port: makes a room ready, piece by piece so that a changed room is heard of at once, and then works
 * out the light for whatever was asked last.
 */
export function serveRoomLight(port: Port<FromRoomLight>): void {
  let version = 0;
  let desk: LightDesk | null = null;
  let asked: Asked | null = null;
  const answer = () => {
    if (!desk || !asked) return;
    const { number, input } = asked;
    asked = null;
    const made = desk.report(input);
    if (made.kind === 'cannot') port.postMessage({ kind: 'trouble', number, reason: made.reason });
    else
      port.postMessage({
        kind: 'lit',
        number,
        lit: { report: made, lines: isoLines(made.map, LINES_AT) },
      });
  };
  const prepare = async (room: RoomModel) => {
    const problem = roomProblem(room);
    if (problem) {
      // The room of before stays in use.
      port.postMessage({ kind: 'trouble', number: null, reason: problem.reason });
      return;
    }
    const mine = ++version;
    desk = null;
    const steps = makeReady(room);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        desk = step.value;
        port.postMessage({ kind: 'ready' });
        return answer();
      }
      port.postMessage({ kind: 'progress', part: step.value });
      await breathe();
      if (mine !== version) return;
    }
  };
  port.onmessage = ({ data }) => {
    const message = data as ToRoomLight;
    if (message.kind === 'room') void prepare(message.room);
    else {
      asked = message;
      answer();
    }
  };
}
