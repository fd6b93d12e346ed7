import { expect } from '@playwright/test';
import { ISO_SPEEDS } from '../../core/units/nominal.ts';
import { test } from './support/evening.ts';
import { Finger, planPoint } from './support/hands.ts';
import {
  backToSheet,
  draftSolved,
  greyOf,
  level,
  openFromSheet,
  openSheet,
  roomWorkedOut,
  row,
  textOf,
  type,
} from './support/light.ts';

test('[LEAD8] the room is worked out with progress shown; then picture and numbers are there', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await lead.addInitScript(() => {
    const parts: number[] = [];
    Object.assign(window, { parts });
    new MutationObserver(() => {
      const said = /room: (\d+) %/.exec(document.querySelector('.light-strip')?.textContent ?? '')?.[1];
      if (said !== undefined && parts.at(-1) !== Number(said)) parts.push(Number(said));
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
  await lead.reload();
  await roomWorkedOut(lead);
  const parts = await lead.evaluate(() => (window as unknown as { parts: number[] }).parts);
  expect(parts.length).toBeGreaterThan(3);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
  expect(Math.max(...parts)).toBeGreaterThan(50);
  await expect(lead.locator('.light-strip')).toContainText(/subject [−+]?\d\.\d ±\d\.\d/);
  await expect(lead.locator('.light-strip')).toContainText(/behind [−+]?\d\.\d, \d+ % black; K out of frame/);
  const inset = lead.locator('.frame-inset .frame-picture');
  await expect(inset).toHaveAttribute('aria-label', /What the camera sees.*lit from camera-right, rim on/);
  expect(new Set(await greyOf(inset)).size).toBeGreaterThan(20);
  await openSheet(lead);
  await expect(row(lead, 'Wanted things behind')).toContainText('Top table');
  await expect(row(lead, 'Unwanted things behind')).toContainText('Kitchen hatch');
  const numbers = await textOf(lead.locator('.levels'));
  expect(numbers).not.toMatch(/NaN|Infinity|undefined/);
});

test('[LEAD4] strip, picture and map follow the finger; the map goes with it unless it is pinned', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await roomWorkedOut(lead);
  const inset = lead.locator('.frame-inset .frame-picture');
  const lines = lead.locator('.light-map path.iso');
  const seen = async () => ({
    strip: await textOf(lead.locator('.light-strip')),
    grey: String(await greyOf(inset)),
    lines: String(await lines.evaluateAll((paths) => paths.map((path) => path.getAttribute('d')))),
  });
  await expect(lines).toHaveCount(0);
  const finger = await Finger.on(lead);
  await finger.down(await planPoint(lead, 0.7, 0.7));
  await expect(lines).not.toHaveCount(0);
  let last = await seen();
  for (const [across, down] of [
    [0.6, 0.6],
    [0.4, 0.7],
    [0.8, 0.5],
  ] as const) {
    await finger.move(await planPoint(lead, across, down));
    for (const what of ['strip', 'grey', 'lines'] as const)
      await expect.poll(async () => (await seen())[what], what).not.toBe(last[what]);
    last = await seen();
  }
  // The line of what is right is there, heavy, and told by its number as well.
  await expect(lead.locator('.light-map path.iso.is-right')).toHaveCSS('stroke-width', '3px');
  await expect(lead.locator('.light-map text').first()).toHaveText(/^[+−]?\d$/);
  await finger.up();
  await expect(lines).toHaveCount(0);
  await lead.getByRole('button', { name: 'Light map' }).click();
  await expect(lines).not.toHaveCount(0);
  await finger.down(await planPoint(lead, 0.5, 0.6));
  await finger.up();
  await expect(lines).not.toHaveCount(0);
  await lead.getByRole('button', { name: 'Light map' }).click();
  await expect(lines).toHaveCount(0);
});

test('[LEAD9] the power of a draft is the solved one, and that is what is called', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await roomWorkedOut(lead);
  const finger = await Finger.on(lead);
  await finger.down(await planPoint(lead, 0.55, 0.75));
  await finger.move(await planPoint(lead, 0.6, 0.7));
  await finger.up();
  await draftSolved(lead, 'K');
  const said = await textOf(lead.locator('.light-strip .power b'));
  await lead.locator('.call-key').click();
  const assistant = await evening.phone('assistant');
  await expect(assistant.locator('.carry-card')).toContainText(said.replace('K ', ''));
});

test('“Take” sets the solved powers: they arrive as nudges, and undo puts them back', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await openSheet(lead);
  const was = (await evening.night()).stands.find(({ kit }) => kit.letter === 'B')?.place.mark.powerStops;
  const take = lead.getByRole('button', { name: /^Take / });
  const [, wanted = ''] = /B (.*)$/.exec((await textOf(take)).replaceAll('\u00a0', ' ')) ?? [];
  expect(wanted).not.toBe('1/64');
  await take.click();
  const card = assistant.locator('.carry-card');
  await expect(card.locator('h2')).toContainText('B');
  await expect(card).toContainText(wanted);
  const power = async () => (await evening.night()).carries.at(-1)?.current.mark.powerStops;
  expect(await power()).not.toBe(was);
  // What was wanted is what is set now: nothing is left to take.
  await expect(lead.locator('.sheet-panel')).not.toContainText('(is 1/64)');
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect(card).toHaveAttribute('data-revision', '2');
  expect(await power()).toBeCloseTo(was ?? Number.NaN, 9);
  await expect(lead.locator('.sheet-panel')).toContainText('(is 1/64)');
});

test('the flash on the camera counts among the lights, and its power is solved', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openSheet(lead);
  const ready = row(lead, 'Ready again, at the wanted powers');
  const take = lead.getByRole('button', { name: /^Take / });
  await expect(ready).not.toContainText('C ');
  await lead.getByRole('button', { name: 'Card', exact: true }).click();
  await expect(ready).toContainText(/C \d/);
  await expect(take).toHaveText(/^Take K\s.*, B\s.*, C\s(off|1\/\d+)/);
  await expect(lead.locator('.sheet-panel .light-strip')).toContainText(/Wanted: K .*, B .*, C /);
  expect((await evening.night()).moment?.cameraLight.use).toBe('card');
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect(ready).not.toContainText('C ');
  await expect(take).not.toHaveText(/, C\s/);
  expect((await evening.night()).moment?.cameraLight.use).toBe('off');
});

test('[LEAD8] a roof that cannot be is named, and the last numbers stay; a field refuses what no room has', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openSheet(lead);
  const underFlat = await textOf(lead.locator('.levels'));
  await openFromSheet(lead, 'Room');
  const flat = await evening.night();
  await lead.getByRole('button', { name: 'Tent, ridge' }).click();
  await expect(lead.locator('.sheet-panel progress')).toBeVisible();
  await expect(lead.locator('.sheet-panel progress')).toHaveCount(0, { timeout: 20_000 });
  await backToSheet(lead);
  await expect(lead.locator('.levels')).not.toHaveText(underFlat);
  const tent = await textOf(lead.locator('.levels'));
  await openFromSheet(lead, 'Room');
  await type(lead.getByLabel('Height of the peak'), '3');
  const alert = lead.locator('.sheet-panel > .sheet-body > [role=alert]');
  await expect(alert).toContainText('The peak at 3 m is not above the walls, 4.2 m.');
  await backToSheet(lead);
  await expect(lead.locator('.sheet-panel .light-strip')).toContainText(
    'The peak at 3 m is not above the walls',
  );
  expect(await textOf(lead.locator('.levels'))).toBe(tent);
  // Asked again about the light, the room that cannot be is still said, and its numbers are still the last good ones'.
  await lead.getByRole('button', { name: 'ISO up' }).click();
  await expect(lead.locator('.levels')).not.toHaveText(tent);
  await expect(lead.locator('.sheet-panel .light-strip')).toContainText(
    'The peak at 3 m is not above the walls',
  );
  await openFromSheet(lead, 'Room');
  await expect(alert).toContainText('The peak at 3 m is not above the walls, 4.2 m.');
  await type(lead.getByLabel('Height of the peak'), '6');
  await expect(alert).toHaveCount(0);

  for (const [name, typed, said] of [
    ['Height of the walls', '0', '0 m is too small: at least 1.5 m. 4.2 m stays in use.'],
    ['Ceiling: light sent back', '100', '100 % is too much: at most 95 %. 80 % stays in use.'],
    ['Walls: light sent back', '1e9', '“1e9” is not a number. 50 % stays in use.'],
    ['Floor: light sent back', '-1', '-1 % is too small: at least 0 %. 30 % stays in use.'],
  ] as const) {
    const field = lead.getByLabel(name, { exact: true });
    await type(field, typed);
    await expect(lead.locator('.number-field', { has: field }).getByRole('alert')).toHaveText(said);
    await field.press('Escape');
  }
  const after = await evening.night();
  expect(after.finishes).toEqual(flat.finishes);
  expect(after.room).toEqual(flat.room);
  expect(after.roof).toEqual({ kind: 'ridge', peakM: 6, ridgeDeg: 90 });
});

test('no speed can be set beyond what cameras have', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openSheet(lead);
  await expect(lead.locator('.sheet-panel').getByRole('textbox')).toHaveCount(0);
  const [last] = ISO_SPEEDS.slice(-1);
  for (let presses = 0; presses <= ISO_SPEEDS.length; presses++)
    await lead.getByRole('button', { name: 'ISO up' }).click();
  await expect(lead.locator('.sheet-panel output').first()).toHaveText(last?.label ?? '');
  await expect(lead.locator('.levels')).not.toContainText(/NaN|Infinity/);
});

test('heads: no guide number of 0; one measured without a room gives half a stop more; an umbrella its loss', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await openSheet(lead);
  const key = row(lead, 'Key alone');
  /** The key's level once it reads otherwise than before. */
  const keyUnlike = async (before: string) => {
    await backToSheet(lead);
    await expect(key).not.toHaveText(before);
    return { text: await textOf(key), stops: (await level(lead, 'Key alone')).stops };
  };
  const printed = { text: await textOf(key), stops: (await level(lead, 'Key alone')).stops };
  const subject = await level(lead, 'Subject, all light');
  const heads = await openFromSheet(lead, 'Heads');
  const head = heads.getByRole('region', { name: 'Head for the key' });
  const number = head.getByLabel('Guide number at ISO 100, full power');
  await type(number, '0');
  await expect(head.getByRole('alert').first()).toHaveText(
    '0 m is too small: at least 1 m. 36 m stays in use.',
  );
  await number.press('Escape');
  await expect(number).toHaveValue('36');
  await head.getByRole('button', { name: 'Measured, no room' }).click();
  // Light goes with the square of the guide number, and a printed one is counted half a stop down. Each is shown
  // to a tenth.
  const open = await keyUnlike(printed.text);
  expect(Math.abs(open.stops - printed.stops - 0.5)).toBeLessThan(0.11);
  expect((await level(lead, 'Subject, all light')).stops).toBeGreaterThan(subject.stops);

  await openFromSheet(lead, 'Heads');
  const umbrella = heads.getByRole('region', { name: 'White umbrella, 1 m' });
  await umbrella.getByRole('button', { name: 'Measured', exact: true }).click();
  const loss = umbrella.getByLabel('Loss on the axis against the bare head');
  await expect(loss).toHaveValue('2');
  const two = await keyUnlike(open.text);
  await openFromSheet(lead, 'Heads');
  await type(loss, '3');
  const three = await keyUnlike(two.text);
  expect(three.stops).toBeLessThan(two.stops);
  const gear = [...(await evening.night()).gear.values()];
  expect(gear.find(({ name }) => name === 'Head for the key')).toMatchObject({
    guideNumberM: 36,
    guideNumberKind: 'open',
  });
  expect(gear.find(({ kind }) => kind === 'umbrella')).toMatchObject({ lossStops: 3 });
});
