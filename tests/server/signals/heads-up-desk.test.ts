import { expect, test } from 'vitest';
import { silentLog } from '../../../server/logging.ts';
import { type Bell, HeadsUpDesk, REMEMBER_MS, RING_AGAIN_MS } from '../../../server/signals/heads-up-desk.ts';
import type { Device } from '../../../server/store/store.ts';
import { asId, type NightId, type PersonId } from '../../../shared/ids.ts';
import type { HeadsUp, HeadsUpNews } from '../../../shared/messages/signals.ts';
import type { Role } from '../../../shared/roles.ts';
import { heldTime } from '../../support/server-time.ts';

const phone = (role: Role, person: string = role, night = 'n1'): Device => ({
  night: asId<NightId>(night),
  role,
  person: asId<PersonId>(person),
  name: person,
  pairedAt: 0,
});

function scene() {
  const time = heldTime();
  const rings: { role: Role; night: string; headsUp: HeadsUp; rang: () => void }[] = [];
  const news: ({ person: string } & HeadsUpNews)[] = [];
  const bell: Bell = {
    ring: ({ night, role }, headsUp, rang) => rings.push({ night, role, headsUp, rang }),
    tell: (_night, person, told) => news.push({ person, ...told }),
  };
  const desk = new HeadsUpDesk({ time, bell, log: silentLog() });
  const headsUp = (id = 'h1', lifeMs = 60_000): HeadsUp => ({
    id,
    kind: 'call',
    carryId: null,
    expiresAt: time.now() + lifeMs,
  });
  return { time, rings, news, desk, headsUp, reaches: () => news.map(({ reach }) => reach) };
}

test('[MSG3] a heads-up rings the other role of the same night, and its sender hears that it was taken', () => {
  const { desk, rings, news, headsUp, time } = scene();
  expect(desk.take(headsUp(), phone('lead'))).toEqual({ at: time.now() });
  expect(rings.map(({ role, night }) => [role, night])).toEqual([['assistant', 'n1']]);
  desk.take(headsUp('h2'), phone('assistant'));
  expect(rings.at(-1)?.role).toBe('lead');
  expect(news.map(({ id, person, reach }) => [id, person, reach])).toEqual([
    ['h1', 'lead', 'taken'],
    ['h2', 'assistant', 'taken'],
  ]);
});

test('[MSG3 MSG4] it rings again every two seconds until the app acknowledges, and then no more', () => {
  const { desk, rings, time, headsUp, reaches } = scene();
  desk.take(headsUp(), phone('lead'));
  time.advance(3 * RING_AGAIN_MS);
  expect(rings).toHaveLength(4);
  expect(reaches()).toEqual(['taken']);
  rings[1]?.rang(); // the acknowledgement of an earlier ring counts, late as it is
  expect(reaches()).toEqual(['taken', 'rang']);
  rings[2]?.rang();
  time.advance(20 * RING_AGAIN_MS);
  expect(rings).toHaveLength(4);
  expect(reaches()).toEqual(['taken', 'rang']);
});

test('[MSG3 MSG4] when its time is over it rings no more, its sender hears so, and a late answer of the app changes nothing', () => {
  const { desk, rings, time, headsUp, reaches } = scene();
  desk.take(headsUp('h1', 5000), phone('lead'));
  time.advance(4999);
  expect(reaches()).toEqual(['taken']);
  time.advance(1);
  expect(reaches()).toEqual(['taken', 'expired']);
  const before = rings.length;
  rings[0]?.rang();
  time.advance(60_000);
  expect(rings).toHaveLength(before);
  expect(reaches()).toEqual(['taken', 'expired']);
});

test('[MSG3] one whose time was over before it came rings nobody', () => {
  const { desk, rings, headsUp, reaches } = scene();
  desk.take(headsUp('h1', -1), phone('lead'));
  expect(rings).toHaveLength(0);
  expect(reaches()).toEqual(['taken', 'expired']);
});

test('[MSG3] a copy of it rings nobody a second time; its sender gets the same receipt and the news once more', () => {
  const { desk, rings, time, headsUp, reaches } = scene();
  const first = headsUp();
  const taken = desk.take(first, phone('lead'));
  time.advance(500);
  rings[0]?.rang();
  time.advance(500);
  expect(desk.take(first, phone('lead'))).toEqual(taken);
  expect(rings).toHaveLength(1);
  expect(reaches()).toEqual(['taken', 'rang', 'rang']);
});

test('an id belongs to the person who used it first, in each night', () => {
  const { desk, rings, headsUp } = scene();
  desk.take(headsUp(), phone('lead', 'noor'));
  expect(desk.take(headsUp(), phone('lead', 'somebody'))).toBe('not-allowed');
  expect(desk.take(headsUp(), phone('lead', 'somebody', 'n2'))).not.toBe('not-allowed');
  expect(rings.map(({ night }) => night)).toEqual(['n1', 'n2']);
});

test('a looker-on calls nobody', () => {
  const { desk, rings, headsUp } = scene();
  expect(desk.take(headsUp(), phone('looker-on'))).toBe('not-allowed');
  expect(rings).toHaveLength(0);
});

test('[MSG4] only a person it was meant for has heard it', () => {
  const { desk, headsUp, reaches } = scene();
  desk.take(headsUp(), phone('lead'));
  desk.heard('h1', phone('lead'));
  desk.heard('h1', phone('looker-on'));
  desk.heard('h1', phone('assistant', 'assistant', 'n2'));
  desk.heard('never', phone('assistant'));
  expect(reaches()).toEqual(['taken']);
  desk.heard('h1', phone('assistant'));
  desk.heard('h1', phone('assistant'));
  expect(reaches()).toEqual(['taken', 'heard']);
});

test('one that was heard rings no more', () => {
  const { desk, rings, time, headsUp } = scene();
  desk.take(headsUp(), phone('lead'));
  desk.heard('h1', phone('assistant'));
  time.advance(30_000);
  expect(rings).toHaveLength(1);
});

test('[MSG3] a phone that comes in is rung at once for what waits for it, and for nothing else', () => {
  const { desk, rings, headsUp } = scene();
  desk.take(headsUp('waits'), phone('lead'));
  desk.take(headsUp('rang'), phone('lead'));
  rings[1]?.rang();
  desk.take(headsUp('other night'), phone('lead', 'lead', 'n2'));
  const before = rings.length;
  desk.arrived(phone('looker-on'));
  expect(rings).toHaveLength(before);
  desk.arrived(phone('assistant'));
  expect(rings.slice(before).map((ring) => ring.headsUp.id)).toEqual(['waits']);
});

test('[MSG4] a sender who was away hears how far each of his got', () => {
  const { desk, rings, news, headsUp } = scene();
  desk.take(headsUp('a'), phone('lead'));
  desk.take(headsUp('b'), phone('lead'));
  rings[0]?.rang();
  news.length = 0;
  desk.arrived(phone('lead'));
  expect(news.map(({ id, reach }) => [id, reach])).toEqual([
    ['a', 'rang'],
    ['b', 'taken'],
  ]);
});

test('what is over is forgotten after a while, and no timer is left', () => {
  const { desk, rings, time, headsUp } = scene();
  desk.take(headsUp('a', 1000), phone('lead'));
  desk.take(headsUp('b'), phone('lead'));
  rings[1]?.rang();
  time.advance(1000 + REMEMBER_MS);
  expect(time.waiting()).toBe(0);
});

test('closing leaves no timer', () => {
  const { desk, time, headsUp } = scene();
  for (let count = 0; count < 5; count += 1) desk.take(headsUp(`h${count}`), phone('lead'));
  desk.close();
  expect(time.waiting()).toBe(0);
});

test('one phone cannot fill the memory with heads-ups', () => {
  const { desk, time, headsUp } = scene();
  for (let count = 0; count < 2000; count += 1) desk.take(headsUp(`h${count}`), phone('lead'));
  expect(time.waiting()).toBeLessThanOrEqual(501);
});
