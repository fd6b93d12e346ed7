import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { parseVenue } from '../../shared/venue/venue-file.ts';
import { key, openCard, openEditor, saidBy } from './support/editor.ts';
import { type Evening, test } from './support/evening.ts';
import { type } from './support/light.ts';

const roomOf = async (evening: Evening) => {
  const { room, features } = await evening.night();
  return { outline: room?.outline, names: features.map(({ name }) => name).sort() };
};

const chooseFile = (lead: Page, name: string, text: string) =>
  lead.locator('.editor-card input[type=file]').setInputFiles({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });

/** Another room in the place of the night's, with nothing in it. */
async function anotherRoom(lead: Page): Promise<void> {
  await openCard(lead, 'New room');
  await type(lead.getByLabel('Width', { exact: true }), '7');
  await key(lead, 'Make this room').tap();
  await expect(saidBy(lead)).toContainText('A new room.');
}

test('[VEN3] a room is kept, renamed, removed, brought back and used again', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const first = await roomOf(evening);
  await openCard(lead, 'Venues');
  await type(lead.getByLabel('Keep this room as'), 'Mill hall');
  await key(lead, 'Keep it').tap();
  await expect(saidBy(lead)).toHaveText('Mill hall is kept on the server.');
  await anotherRoom(lead);
  expect((await roomOf(evening)).names).toEqual([]);
  await openCard(lead, 'Venues');
  await type(lead.locator('.venue-line').getByLabel('Name', { exact: true }), 'Old mill');
  await key(lead, 'Remove Old mill').tap();
  await expect(saidBy(lead)).toContainText('can be brought back');
  await expect(key(lead, 'Use Old mill')).toHaveCount(0);
  await lead.getByRole('button', { name: /Bring back/ }).tap();
  await key(lead, 'Use Old mill').tap();
  await expect(saidBy(lead)).toContainText('Old mill is this night’s room.');
  await expect.poll(() => roomOf(evening)).toEqual(first);
  await key(lead, 'Undo').tap();
  await expect.poll(async () => (await roomOf(evening)).names).toEqual([]);
});

test('[VEN3] another phone of the night finds the kept room too', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  await openCard(lead, 'Venues');
  await key(lead, 'Keep it').tap();
  await lead.getByRole('button', { name: /^Use / }).waitFor();
  const other = await evening.phone('lead');
  await openEditor(other);
  await openCard(other, 'Venues');
  await expect(other.getByRole('button', { name: /^Use / })).toHaveCount(1);
});

test('[VEN1] a room saved as a file is the same room when the file is taken again', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const first = await roomOf(evening);
  await openCard(lead, 'Venues');
  const [file] = await Promise.all([lead.waitForEvent('download'), key(lead, 'Save as a file').tap()]);
  expect(file.suggestedFilename()).toBe('demo-night-in-the-long-hall.hushmark-venue.json');
  const text = await readFile(await file.path(), 'utf8');
  expect(parseVenue(text).ok).toBe(true);
  await anotherRoom(lead);
  await openCard(lead, 'Venues');
  await chooseFile(lead, 'hall.json', text);
  await expect.poll(() => roomOf(evening)).toEqual(first);
});

test('[VEN2] a foreign or broken file is refused in words and changes nothing', async ({ evening }) => {
  const lead = await evening.phone('lead');
  await openEditor(lead);
  const before = await roomOf(evening);
  await openCard(lead, 'Venues');
  const said = new Set<string>();
  for (const [name, text] of [
    ['list.json', '{"tables": 12}'],
    ['half.json', '{"format": "hush'],
    ['notes.txt', 'call the venue'],
  ] as const) {
    await chooseFile(lead, name, text);
    await expect(saidBy(lead)).toContainText(`“${name}” is not taken:`);
    said.add(((await saidBy(lead).textContent()) ?? '').replace(name, ''));
  }
  expect(said.size).toBeGreaterThan(1);
  expect(await roomOf(evening)).toEqual(before);
  await expect(key(lead, 'Undo')).toBeDisabled();
});
