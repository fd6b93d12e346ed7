import { expect } from '@playwright/test';
import { test } from './support/evening.ts';
import { expectReach, Finger, moveByKeys, planPoint } from './support/hands.ts';

/** The bearing from one spot to another, worked out here and not by the app: clockwise from plan-up, y down. */
const bearing = (from: { x: number; y: number }, to: { x: number; y: number }) =>
  (Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI;
const turn = (deg: number) => ((((deg + 180) % 360) + 360) % 360) - 180;

test('[LEAD1] a press on the floor makes a draft and calls nothing; Call sends it', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const finger = await Finger.on(lead);
  await finger.down(await planPoint(lead, 0.7, 0.7));
  await expect(lead.locator('.loupe')).toBeVisible();
  await finger.move(await planPoint(lead, 0.72, 0.68));
  await finger.up();
  await expect(lead.locator('[data-draft="K"]')).toBeVisible();
  await expect(lead.locator('.loupe')).toBeHidden();
  expect((await evening.night()).carries).toHaveLength(0);
  await lead.getByRole('button', { name: 'Call K here' }).click();
  await expectReach(lead, 'K', 'called');
  expect((await evening.night()).carries).toHaveLength(1);
});

test('[LEAD2][LEAD3][ASSIST1][ASSIST2][DOC13] one move, from the call to the stand on its mark', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  // From (12.9, 9.1) by 2.9 m right and 2.7 m up: on the line to the middle of the bar (17.3, 5), 1 m short of it.
  await moveByKeys(lead, 29, -27);
  await lead.getByRole('button', { name: 'Call K here' }).click();
  // With no assistant in the night the call is on the server and nowhere else: no state claims more.
  await expectReach(lead, 'K', 'called');
  await expect(lead.locator('[data-carry]')).toHaveAttribute('data-echoed', 'no');

  const assistant = await evening.phone('assistant');
  const card = assistant.locator('.carry-card');
  await expect(card).toBeVisible();
  await expect(card.locator('.sentence')).toHaveText('Toward the bar, stop 1 m short of it');
  await expect(card.locator('.distance b')).toHaveText('4 m');
  await expect(card.locator('.distance span')).toHaveText('≈ 6 steps');
  const [stood, couple, mark] = [
    { x: 12.9, y: 9.1 },
    { x: 9, y: 6 },
    { x: 15.8, y: 6.4 },
  ] as const;
  const arrow = Number(await card.locator('.big-arrow').getAttribute('data-turn'));
  expect(arrow).toBeCloseTo(turn(bearing(stood, mark) - bearing(stood, couple)), 0);

  await assistant.getByRole('button', { name: 'Foyer exit' }).click();
  const turned = Number(await card.locator('.big-arrow').getAttribute('data-turn'));
  expect(turned).toBeCloseTo(turn(bearing(stood, mark) - bearing(stood, { x: 17.95, y: 8.8 })), 0);
  await expect(card.locator('.carry-plan svg[role=img]')).toHaveAttribute(
    'aria-label',
    'Plan, Foyer exit at the top',
  );

  await expectReach(lead, 'K', 'seen');
  await expect(lead.locator('[data-carry=seen]')).toHaveAttribute('data-echoed', 'yes');
  const [carry] = (await evening.night()).carries;
  expect(carry?.current.stamps.seen?.echo).toEqual(carry?.current.mark);

  await assistant.getByRole('button', { name: 'Carrying K' }).click();
  await expectReach(lead, 'K', 'carrying');
  await assistant.getByRole('button', { name: 'K is set' }).click();
  await expectReach(lead, 'K', 'set');
  await expect(assistant.getByRole('heading', { name: 'Nothing to carry' })).toBeVisible();
  const stand = (await evening.night()).stands.find(({ kit }) => kit.letter === 'K');
  expect(stand?.place.mark.spot.x).toBeCloseTo(mark.x, 6);
  expect(stand?.place.mark.spot.y).toBeCloseTo(mark.y, 6);

  await assistant.getByRole('button', { name: 'Undo' }).click();
  await expectReach(lead, 'K', 'carrying');
  const back = (await evening.night()).stands.find(({ kit }) => kit.letter === 'K');
  expect(back?.place.mark.spot).toEqual(stood);
});

test('[LEAD2] a hidden page has a call delivered, never seen', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await assistant.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expect(lead.locator('.other-phone')).toContainText('screen off');
  await moveByKeys(lead, 10, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', 'delivered');
  await expect(assistant.locator('.carry-card')).toBeVisible();
  // Two beats of presence later the card has long been drawn, and still nobody can have seen it.
  await expect(lead.locator('.stand-key[data-reach=delivered]')).toContainText(/, [5-9] s/, {
    timeout: 15_000,
  });
  await assistant.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'visible', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await expectReach(lead, 'K', 'seen');
});

test('[LEAD4] the light sheet follows the draft', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const strip = lead.locator('.light-strip');
  const before = await strip.textContent();
  expect(before).toMatch(/46° camera-right, Rembrandt/);
  const finger = await Finger.on(lead);
  await finger.down(await planPoint(lead, 0.55, 0.75));
  await expect(strip).not.toHaveText(before ?? '');
  await finger.move(await planPoint(lead, 0.5, 0.5));
  await expect(strip).toContainText('K in frame');
  await finger.up();
  await lead.getByRole('button', { name: 'Drop', exact: true }).click();
  await expect(strip).toContainText('46° camera-right, Rembrandt');
  await strip.click();
  await lead.getByRole('button', { name: 'ISO up' }).click();
  await expect(lead.locator('.sheet-panel output').first()).toHaveText('2000');
  await expect(lead.locator('.sheet-panel .light-strip')).toContainText(/subject −0\.[34]/);
});

test('[ASSIST2] "can\'t" comes with its reason and can be undone', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await moveByKeys(lead, -10, 0);
  await lead.locator('.call-key').click();
  await assistant.getByRole('button', { name: 'Can’t' }).click();
  await assistant.getByRole('button', { name: 'guests in the way' }).click();
  await expectReach(lead, 'K', 'cant');
  await expect(lead.locator('.stand-key').first()).toContainText("can't: guests in the way");
  await assistant.getByRole('button', { name: 'Undo' }).click();
  await expectReach(lead, 'K', 'seen');
});

test('[ASSIST4] a withdrawn call stays until it is acknowledged, and can be called again', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await moveByKeys(lead, -10, 0);
  await lead.locator('.call-key').click();
  await expectReach(lead, 'K', 'seen');
  await lead.getByRole('button', { name: 'Withdraw' }).click();
  await expectReach(lead, 'K', 'stands');
  await expect(assistant.locator('.carry-card.is-withdrawn')).toBeVisible();
  await lead.getByRole('button', { name: 'Undo' }).click();
  await expect(assistant.getByRole('button', { name: 'Carrying K' })).toBeVisible();
  await lead.getByRole('button', { name: 'Withdraw' }).click();
  await assistant.getByRole('button', { name: 'Understood' }).click();
  await expect(assistant.getByRole('heading', { name: 'Nothing to carry' })).toBeVisible();
});

test('[ASSIST3][DOC14] a nudge camera-left arrives in the assistant’s own sense', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await lead.getByRole('button', { name: 'Nudge' }).click();
  await lead.getByRole('button', { name: 'Camera-left' }).click();
  const card = assistant.locator('.carry-card');
  await expect(card.locator('.distance b')).toHaveText(/^3[23] cm$/);
  // The camera at (9.4, 10.2) looks at (9, 6); its left is that way turned by 90° anticlockwise.
  const axis = { x: 9 - 9.4, y: 6 - 10.2 };
  const left = bearing({ x: 0, y: 0 }, { x: axis.y, y: -axis.x });
  const facing = bearing({ x: 12.9, y: 9.1 }, { x: 9, y: 6 });
  const arrow = Number(await card.locator('.big-arrow').getAttribute('data-turn'));
  expect(arrow).toBeCloseTo(turn(left - facing), 0);
  // K stands camera-right and faces the couple, so the camera's left is ahead of whoever carries it, to the left.
  await expect(card.locator('.sentence')).toHaveText('Half a step ahead to your left');
  await lead.getByRole('button', { name: 'Up 10 cm' }).click();
  await expect(card.locator('.mark-facts')).toContainText('10 cm higher');
  await expect(card).toHaveAttribute('data-revision', '2');
});
