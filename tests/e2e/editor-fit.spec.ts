import { expect, type Page } from '@playwright/test';
import { expectClean, expectFits, expectNoSideways, FIT_SCREENS } from './support/clean.ts';
import { key, openCard, openEditor } from './support/editor.ts';
import { test } from './support/evening.ts';
import { pngOfRoom } from './support/room-picture.ts';

/** Opens a thing of the list, or two together. */
async function openThings(lead: Page, count: 1 | 2): Promise<void> {
  await openCard(lead, 'List');
  for (let thing = 0; thing < count; thing++) await lead.locator('.editor-list button').nth(thing).click();
  await key(lead, count === 1 ? 'Change' : 'Change 2').click();
}

/** Every card of the editor, the way to it, and what must be on it before it is looked at. */
const CARDS: Readonly<Record<string, (lead: Page) => Promise<void>>> = {
  keys: async () => {},
  add: async (lead) => {
    await openCard(lead, 'Add');
    await key(lead, 'Table').click();
  },
  rows: async (lead) => {
    await openCard(lead, 'Add');
    await key(lead, 'Tables in rows').click();
  },
  walls: async (lead) => {
    await openCard(lead, 'Walls');
    await key(lead, 'Corner up').click();
  },
  list: (lead) => openCard(lead, 'List'),
  thing: (lead) => openThings(lead, 1),
  things: (lead) => openThings(lead, 2),
  camera: async (lead) => {
    await openCard(lead, 'List');
    await lead.getByRole('button', { name: /^Camera of this moment/ }).click();
    await key(lead, 'Change').click();
  },
  'new room': async (lead) => {
    await openCard(lead, 'New room');
    await key(lead, 'L-shape').click();
    await lead.getByText('Walk along a wall').click();
  },
  'no file yet': (lead) => openCard(lead, 'From a file'),
  'a picture': async (lead) => {
    await openCard(lead, 'From a file');
    await lead.locator('input[type=file]').setInputFiles(await pngOfRoom(lead));
    await lead.locator('.trace').click({ position: { x: 30, y: 30 } });
    await lead.locator('.trace').click({ position: { x: 120, y: 30 } });
    await lead.getByLabel('Its length in the room').waitFor();
  },
  venues: async (lead) => {
    await openCard(lead, 'Venues');
    await key(lead, 'Keep it').click();
    await lead.getByRole('button', { name: /^Use / }).first().waitFor();
  },
};

for (const screen of FIT_SCREENS)
  test(`[APP2][APP3] every card of the plan’s editor at ${screen.name}`, async ({ evening }) => {
    // Twelve cards, each looked at by axe and once more with large text.
    test.setTimeout(180_000);
    const lead = await evening.phone('lead', screen);
    await openEditor(lead);
    for (const [card, open] of Object.entries(CARDS)) {
      await open(lead);
      await expectClean(lead, card);
      const plan = await lead.locator('.editor-plan').boundingBox();
      if (card !== 'a picture') expect(plan?.height, card).toBeGreaterThanOrEqual(180);
    }
    await lead.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    for (const [card, open] of Object.entries(CARDS)) {
      // It is reached by its keys: whatever covers them would show here.
      await open(lead);
      await expectNoSideways(lead, `${card}, large text`);
      await expect(key(lead, 'Done'), card).toBeInViewport({ ratio: 0.9 });
    }
  });

test('[APP2] the editor shows what is chosen in forced colours, and nothing in it moves by itself', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await lead.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
  await openEditor(lead);
  const styleOf = (selector: string, property: string) =>
    lead
      .locator(selector)
      .first()
      .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), property);
  for (const [card, open] of Object.entries(CARDS)) {
    await open(lead);
    await expectFits(lead, `${card}, forced colours`);
    const moving = await lead.evaluate(() => document.getAnimations().length);
    expect(moving, card).toBe(0);
  }
  await openThings(lead, 1);
  expect(await styleOf('.editor-plan .is-chosen', 'stroke-width')).not.toBe(
    await styleOf('.editor-plan .feature:not(.is-chosen)', 'stroke-width'),
  );
  const pressedIn = await styleOf('.editor-card [aria-pressed="true"]', 'outline-style');
  const not = await styleOf('.editor-card [aria-pressed="false"]', 'outline-style');
  const border = await styleOf('.editor-card [aria-pressed="true"]', 'border-top-width');
  const notBorder = await styleOf('.editor-card [aria-pressed="false"]', 'border-top-width');
  expect(`${pressedIn} ${border}`).not.toBe(`${not} ${notBorder}`);
});
