import { expect, type Locator, type Page } from '@playwright/test';
import type { Spot } from '../../core/geometry/spot.ts';
import type { Feature } from '../../shared/document/parts.ts';
import {
  drag,
  dragged,
  key,
  onPage,
  openCard,
  openEditor,
  press,
  pressed,
  saidBy,
  tabTo,
  typeByKeys,
} from './support/editor.ts';
import { type Evening, test } from './support/evening.ts';
import { Finger, moveByKeys } from './support/hands.ts';

/** What a new room may take, as agreed for a newcomer who has until the soup is served. */
const MOST_ACTIONS = 60;

const featuresOf = async (evening: Evening): Promise<readonly Feature[]> => (await evening.night()).features;
const named = async (evening: Evening, name: string) =>
  (await featuresOf(evening)).find((feature) => feature.name === name);
const spotOf = async (evening: Evening, name: string): Promise<Spot | undefined> =>
  (await named(evening, name))?.at;
const cornersOf = async (evening: Evening) => (await evening.night()).room?.outline ?? [];
const transformOf = (lead: Page) =>
  lead.locator('.plan-editor .plan svg > g').first().getAttribute('transform');

/** Two hands that count: a tap, a drag and a typed field are an action each. */
class Newcomer {
  actions = 0;
  readonly #lead: Page;
  constructor(lead: Page) {
    this.#lead = lead;
  }
  async tap(name: string): Promise<void> {
    this.actions += 1;
    await key(this.#lead, name).tap();
  }
  async floor(spot: Spot): Promise<void> {
    this.actions += 1;
    await pressed(this.#lead, spot);
  }
  async drag(from: Spot, to: Spot): Promise<void> {
    this.actions += 1;
    await dragged(this.#lead, from, to);
  }
  async type(field: Locator, text: string): Promise<void> {
    this.actions += 1;
    await field.fill(text);
    await field.press('Enter');
  }
}

test('[PLAN1] a newcomer has a room with 12 tables, 2 exits, band, bar and cake in at most 60 actions', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const hands = new Newcomer(lead);
  await hands.tap('More');
  await hands.tap('Plan of the room');
  await hands.tap('New room');
  await hands.type(lead.getByLabel('Width', { exact: true }), '20');
  await hands.type(lead.getByLabel('Depth', { exact: true }), '14');
  await hands.type(lead.getByLabel('Ceiling height'), '4');
  await hands.tap('Make this room');
  await hands.tap('Tables in rows');
  await hands.tap('Put down 12');
  // One of the twelve is dragged, and all go along.
  await hands.drag({ x: 10 - 4.95, y: 7 }, { x: 10 - 4.95, y: 6 });
  await hands.tap('Back');
  await hands.tap('Add');
  for (const [kind, spots] of [
    [
      'Exit',
      [
        { x: 0, y: 3 },
        { x: 10, y: 14 },
      ],
    ],
    ['Band', [{ x: 3, y: 12 }]],
    ['Bar', [{ x: 16, y: 12 }]],
    ['Cake table', [{ x: 10, y: 12.5 }]],
  ] as const) {
    await hands.tap(kind);
    for (const spot of spots) await hands.floor(spot);
  }
  await hands.tap('Done');
  expect(hands.actions).toBeLessThanOrEqual(MOST_ACTIONS);

  await expect.poll(async () => (await featuresOf(evening)).length).toBe(17);
  const { room, features } = await evening.night();
  expect(room?.outline).toEqual([
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 14 },
    { x: 0, y: 14 },
  ]);
  expect(room?.ceilingM).toBe(4);
  const count = (kind: string) => features.filter((feature) => feature.kind === kind).length;
  expect(['table', 'exit', 'band', 'bar', 'cake'].map(count)).toEqual([12, 2, 1, 1, 1]);
  const exits = features.filter(({ kind }) => kind === 'exit');
  // They lie in their walls, and run along them.
  expect(exits.map(({ at, turnDeg }) => [at.x, at.y, turnDeg])).toEqual(
    expect.arrayContaining([
      [0, expect.closeTo(3, 0), 90],
      [expect.closeTo(10, 0), 14, 0],
    ]),
  );
  const rows = new Set(features.filter(({ kind }) => kind === 'table').map(({ at }) => at.y.toFixed(3)));
  expect(rows.size).toBe(3);
  expect(new Set(features.map(({ name }) => name)).size).toBe(17);
});

test('[PLAN1] keys alone make a room, add, move, turn, name, take off, undo and change the walls', async ({
  evening,
}) => {
  const lead = await evening.phone('lead', { width: 1280, height: 800, touch: false });
  await press(lead, 'More');
  await press(lead, 'Plan of the room');
  await press(lead, 'New room');
  await typeByKeys(lead, 'Width', '16');
  await typeByKeys(lead, 'Depth', '10');
  await press(lead, 'Make this room');
  await press(lead, 'Bar');
  await press(lead, 'Put in the middle');
  await lead.keyboard.press('Shift+ArrowLeft');
  await lead.keyboard.press('ArrowDown');
  await lead.keyboard.press(']');
  await typeByKeys(lead, 'Name', 'Long bar');
  await expect
    .poll(() => spotOf(evening, 'Long bar'))
    .toEqual({ x: expect.closeTo(7, 6), y: expect.closeTo(5.1, 6) });
  expect((await named(evening, 'Long bar'))?.turnDeg).toBe(15);
  await press(lead, 'Take off');
  await expect.poll(async () => (await featuresOf(evening)).length).toBe(0);
  await lead.keyboard.press('Control+z');
  await expect.poll(() => spotOf(evening, 'Long bar')).toBeTruthy();
  for (let step = 0; step < 2; step++) await lead.keyboard.press('Control+z');
  await expect.poll(async () => (await featuresOf(evening))[0]).toMatchObject({ name: 'Bar', turnDeg: 0 });
  await lead.keyboard.press('Control+y');
  await expect.poll(async () => (await named(evening, 'Bar'))?.turnDeg).toBe(15);
  await press(lead, 'Walls');
  await typeByKeys(lead, 'Wall 2, down', '11.5');
  await expect.poll(async () => (await cornersOf(evening))[2]).toEqual({ x: 16, y: 11.5 });
  await press(lead, 'Corner up');
  await lead.keyboard.press('Shift+ArrowRight');
  await expect.poll(async () => (await cornersOf(evening))[0]).toEqual({ x: 1, y: 0 });
  await press(lead, 'Back');
  await press(lead, 'List');
  await press(lead, /^Camera of this moment/);
  const before = (await evening.night()).moment?.view?.camera.spot.x ?? 0;
  await lead.keyboard.press('ArrowLeft');
  await expect
    .poll(async () => (await evening.night()).moment?.view?.camera.spot.x)
    .toBeCloseTo(before - 0.1, 6);
  await lead.keyboard.press('Escape');
  await lead.keyboard.press('Escape');
  await lead.locator('.lead-face').waitFor();
});

test('the plan is moved, sized and turned by keys, and Whole room brings it back', async ({ evening }) => {
  const lead = await evening.phone('lead', { width: 1280, height: 800, touch: false });
  await openEditor(lead);
  const whole = await transformOf(lead);
  const seen = new Set([whole]);
  await tabTo(lead, key(lead, 'Add'));
  for (const pressedKey of ['ArrowRight', '+', 'r']) {
    await lead.keyboard.press(pressedKey);
    await expect.poll(async () => seen.has(await transformOf(lead))).toBe(false);
    seen.add(await transformOf(lead));
  }
  await lead.keyboard.press('0');
  await expect.poll(() => transformOf(lead)).toBe(whole);
  for (const name of ['Larger', 'Turn the plan']) {
    await press(lead, name);
    await expect.poll(() => transformOf(lead)).not.toBe(whole);
  }
  await press(lead, 'Whole room');
  await expect.poll(() => transformOf(lead)).toBe(whole);
});

test('two fingers move, size and turn the plan; it stays so while things are moved and named', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const whole = await transformOf(lead);
  const finger = await Finger.on(lead);
  const [left, right] = [await onPage(lead, { x: 7, y: 6 }), await onPage(lead, { x: 11, y: 6 })];
  await finger.down(left);
  await finger.down(left, right);
  await finger.move({ x: left.x - 40, y: left.y - 60 }, { x: right.x + 40, y: right.y + 60 });
  await finger.up();
  const chosen = await transformOf(lead);
  expect(chosen).not.toBe(whole);
  const [, turnDeg = ''] = /rotate\((-?[\d.]+)\)/.exec(chosen ?? '') ?? [];
  expect(Math.abs(Number(turnDeg))).toBeGreaterThan(12);
  // Nothing was moved by the two fingers.
  const at = (await spotOf(evening, 'Dance floor')) ?? { x: 0, y: 0 };
  expect(at).toEqual({ x: 9, y: 6.2 });
  await dragged(lead, { x: 9, y: 4.5 }, { x: 9.6, y: 4.5 });
  await expect.poll(async () => (await spotOf(evening, 'Dance floor'))?.x).not.toBe(9);
  // The same middle and size, whatever height is left for the plan by the card below it.
  const afterTranslate = (transform: string | null) => transform?.replace(/^translate\([^)]*\)/, '');
  expect(afterTranslate(await transformOf(lead))).toBe(afterTranslate(chosen));
  await key(lead, 'Whole room').tap();
  await expect.poll(() => transformOf(lead)).toBe(whole);
});

test('one finger pulls the plan along by its bare floor', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const [before, things] = [await transformOf(lead), await featuresOf(evening)];
  await dragged(lead, { x: 4.6, y: 3.6 }, { x: 5.6, y: 4.6 });
  await expect.poll(() => transformOf(lead)).not.toBe(before);
  expect(await featuresOf(evening)).toEqual(things);
});

test('[PLAN2] what a thing is caught by is said while it is dragged, and it lies there when it is let go', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const lift = await drag(lead, { x: 3.2, y: 2.2 }, { x: 16.5, y: 0.45 });
  await expect(saidBy(lead)).toHaveText('0.5 m from the wall');
  // Others see nothing of it before it is let go.
  expect(await spotOf(evening, 'Lemon table')).toEqual({ x: 3.2, y: 2.2 });
  await lift();
  await expect.poll(async () => (await spotOf(evening, 'Lemon table'))?.y).toBeCloseTo(0.5, 6);
  const lifted = await drag(lead, { x: 15.2, y: 10.6 }, { x: 15.2, y: 11.95 });
  await expect(saidBy(lead)).toHaveText('on the wall');
  await lifted();
  await expect.poll(async () => (await spotOf(evening, 'Cake table'))?.y).toBeCloseTo(12, 6);
});

test('[PLAN4] walls that would cross are refused in words, and the last outline stays', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const before = await cornersOf(evening);
  await openCard(lead, 'Walls');
  const lift = await drag(lead, { x: 0, y: 0 }, { x: 18.9, y: 6 });
  await expect(saidBy(lead)).toHaveText('The walls would cross or touch each other.');
  await lift();
  await expect(saidBy(lead)).toHaveText('The walls would cross or touch each other.');
  await expect(lead.locator('.plan-editor .wall')).toHaveAttribute('d', /^M0\.000 0\.000L18\.000 0\.000/);
  // The next drag goes through: what was refused has left nothing behind.
  await dragged(lead, { x: 18, y: 0 }, { x: 17, y: 1 });
  await expect.poll(async () => (await cornersOf(evening))[1]).toEqual({ x: 17, y: 1 });
  expect((await cornersOf(evening)).filter((_, index) => index !== 1)).toEqual(
    before.filter((_, index) => index !== 1),
  );
});

test('the camera and the couple of the moment are dragged on the plan too', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const view = async () => (await evening.night()).moment?.view;
  const [camera, subject] = [(await view())?.camera.spot, (await view())?.subject.spot];
  if (!camera || !subject) throw new Error('the demo night has no view');
  await dragged(lead, camera, { x: camera.x + 1, y: camera.y });
  await expect.poll(async () => (await view())?.camera.spot.x).toBeCloseTo(camera.x + 1, 1);
  await dragged(lead, subject, { x: subject.x - 1, y: subject.y });
  await expect.poll(async () => (await view())?.subject.spot.x).toBeCloseTo(subject.x - 1, 1);
  expect(await spotOf(evening, 'Dance floor')).toEqual({ x: 9, y: 6.2 });
});

test('[PLAN3] undo and redo take back one’s own changes only; everyone sees both', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const other = await evening.phone('lead', { width: 1280, height: 800, touch: false });
  const assistant = await evening.phone('assistant');
  await moveByKeys(other, -10, 0);
  await other.locator('.call-key').click();
  await assistant.locator('.carry-card .room-drawing').first().waitFor();
  const pillars = (page: Page) => page.locator('.room-drawing').first().locator('.is-pillar');
  await openEditor(lead);
  await openEditor(other);
  await expect(key(lead, 'Undo')).toBeDisabled();
  await openCard(lead, 'Add');
  await key(lead, 'Pillar').tap();
  await pressed(lead, { x: 5, y: 4 });
  await expect(pillars(assistant)).toHaveCount(1);
  await openCard(other, 'Add');
  await key(other, 'Pillar').click();
  await key(other, 'Put in the middle').click();
  await expect(pillars(assistant)).toHaveCount(2);
  await key(lead, 'Undo').tap();
  await expect(pillars(assistant)).toHaveCount(1);
  await expect(saidBy(lead)).toHaveText('Taken back.');
  // The one that is left is the other's: this phone has nothing more to take back.
  await expect(key(lead, 'Undo')).toBeDisabled();
  expect((await featuresOf(evening)).find(({ kind }) => kind === 'pillar')?.at).toEqual({ x: 9, y: 6 });
  await key(lead, 'Redo').tap();
  await expect(pillars(assistant)).toHaveCount(2);
  // Deleting is an undo away as well.
  await key(lead, 'Back').tap();
  await pressed(lead, { x: 5, y: 4 });
  await key(lead, 'Take off').tap();
  await expect(pillars(assistant)).toHaveCount(1);
  await key(lead, 'Undo').tap();
  await expect(pillars(assistant)).toHaveCount(2);
  expect((await featuresOf(evening)).filter(({ kind }) => kind === 'pillar').map(({ at }) => at)).toEqual(
    expect.arrayContaining([
      { x: expect.closeTo(5, 3), y: expect.closeTo(4, 3) },
      { x: 9, y: 6 },
    ]),
  );
});
