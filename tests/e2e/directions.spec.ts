import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './support/evening.ts';
import { expectReach, moveByKeys } from './support/hands.ts';

/** Calls the key, which stands at (12.9, 9.1), by whole decimetres to somewhere else. */
async function callKey(lead: Page, rightDm: number, downDm: number): Promise<void> {
  await moveByKeys(lead, rightDm, downDm);
  await lead.getByRole('button', { name: 'Call K here' }).click();
}

const turnOf = async (card: Locator): Promise<number> =>
  Number(await card.locator('.big-arrow').getAttribute('data-turn'));

const turn = (deg: number) => ((((deg + 180) % 360) + 360) % 360) - 180;

test('[ASSIST5] a way that bends: the arrow to the bend, the plan with the whole of it', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  // To (9.6, 11.2): the thyme table at (11.4, 10.4) stands between.
  await callKey(lead, -33, 21);
  const card = assistant.locator('.carry-card');
  await expect(card.locator('.sentence')).toContainText('Round the thyme table');
  await expect(card.locator('[data-way=bends] .way-bend').first()).toBeVisible();
  await expect(card.locator('.distance')).toContainText('to the bend');
  await expect(card.locator('.whole-way')).toHaveText(/^[45](\.5)? m, ≈ [678] steps in all$/);
  // The line on the plan begins where the arrow points: the plan is turned to what is faced, as the arrow is.
  const path = await card.locator('.way-line:not(.is-rest)').getAttribute('d');
  const [x0, y0, x1, y1] = (path ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [];
  const drawn = (Math.atan2((x1 ?? 0) - (x0 ?? 0), (y0 ?? 0) - (y1 ?? 0)) * 180) / Math.PI;
  expect(Math.abs(turn(drawn - (await turnOf(card))))).toBeLessThan(0.5);
});

test('[ASSIST5] where there is no way the card says why, and the line is broken', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await callKey(lead, 17, -69);
  const card = assistant.locator('.carry-card');
  await expect(card.locator('.sentence')).toHaveText('No way there: the mark is on the olive table');
  await expect(card.locator('[data-way=none] .way-nearest')).toBeVisible();
  await expect(card.locator('.big-arrow')).toHaveAttribute('data-look', 'straight');
  await expect(card.locator('.whole-way')).toHaveText('You get within 1.2 m');
});

test('[ASSIST6][ASSIST3] nudges made quickly arrive as one change, one line for each thing', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  await lead.getByRole('button', { name: 'Nudge' }).click();
  await lead.getByRole('button', { name: 'Up 10 cm' }).click();
  await lead.getByRole('button', { name: 'Up 10 cm' }).click();
  await lead.getByRole('button', { name: 'Power +⅓' }).click();
  await lead.getByRole('button', { name: 'Umbrella 15° right' }).click();
  const assistant = await evening.phone('assistant');
  const card = assistant.locator('.carry-card');
  // The key faces away from the camera: toward its right is clockwise, to the right of who stands behind it.
  await expect(card.locator('.sentence span')).toHaveText([
    '20 cm higher',
    'Power ⅓ up',
    'Turn the umbrella 15° to the right',
  ]);
  await expect(card.locator('.distance b')).toHaveText('stay');
  await expect(card.locator('.mark-facts div')).toHaveCount(2);
  await expect(card.locator('h2')).toContainText('changed');
});

test('[ASSIST7][LEAD10][DOC24] set, but not there: the lead sees both marks and why', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await callKey(lead, 0, -40);
  await assistant.getByRole('button', { name: 'Carrying K' }).click();
  await assistant.getByRole('button', { name: 'Set, but not there' }).click();
  const panel = assistant.locator('.sheet-panel');
  await expect(panel.getByRole('button', { name: 'Press how far off it is' })).toBeDisabled();
  // Two steps of 65 cm back, as who faces the couple counts them, then one half to the left.
  await panel.getByRole('button', { name: 'two steps' }).click();
  await panel.getByRole('button', { name: 'Back' }).click();
  await panel.getByRole('button', { name: 'half a step' }).click();
  await panel.getByRole('button', { name: 'Left' }).click();
  await expect(panel.locator('.offset-said')).toHaveText(
    'K stands 1.3 m back, 33 cm to the left of its mark',
  );
  await panel.getByRole('button', { name: 'guests' }).click();
  await panel.getByRole('button', { name: 'Set here' }).click();

  await expectReach(lead, 'K', 'set');
  await expect(lead.locator('.elsewhere-line')).toHaveText(
    /^K set 1\.3 m (short|to camera-\w+|nearer): guests$/,
  );
  await expect(lead.locator('[data-elsewhere=K] .look-draft')).toBeVisible();
  await expect(lead.locator('[data-elsewhere=K] .look-set')).toBeVisible();
  await expect(lead.locator('.stand-key').first()).toContainText('set elsewhere');
  const stand = (await evening.night()).stands.find(({ kit }) => kit.letter === 'K');
  const [mark, couple, stood] = [
    { x: 12.9, y: 5.1 },
    { x: 9, y: 6 },
    { x: 12.9, y: 9.1 },
  ] as const;
  const facing = Math.atan2(couple.x - stood.x, stood.y - couple.y);
  const [ahead, right] = [-1.3, -0.325];
  expect(stand?.place.mark.spot.x).toBeCloseTo(
    mark.x + ahead * Math.sin(facing) + right * Math.cos(facing),
    3,
  );
  expect(stand?.place.mark.spot.y).toBeCloseTo(
    mark.y - ahead * Math.cos(facing) + right * Math.sin(facing),
    3,
  );

  await lead.getByRole('button', { name: 'List', exact: true }).click();
  await expect(lead.locator('.sheet-panel')).toContainText('Set elsewhere');
  await lead.getByRole('button', { name: 'Close' }).click();
  await assistant.getByRole('button', { name: 'Undo' }).click();
  await expectReach(lead, 'K', 'carrying');
  await expect(lead.locator('.elsewhere-line')).toHaveCount(0);
});

test('[ASSIST8] the arrow turns with the phone after "I’m facing", as a wedge, for a minute', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await assistant.context().grantPermissions(['accelerometer', 'gyroscope', 'magnetometer']);
  const phone = await assistant.context().newCDPSession(assistant);
  const hold = (alpha: number) =>
    phone.send('DeviceOrientation.setDeviceOrientationOverride', { alpha, beta: 40, gamma: 0 });
  await hold(200);
  await assistant.locator('.nothing summary', { hasText: 'Step' }).click();
  const key = assistant.getByRole('button', { name: /^Arrow turns with the phone/ });
  await expect(key).toHaveText('Arrow turns with the phone: off');
  await key.click();
  await hold(201);
  await expect(assistant.getByText('On: press what you face')).toBeVisible();
  await callKey(lead, 29, -27);
  const card = assistant.locator('.carry-card');
  await expect(card.locator('.big-arrow')).toHaveAttribute('data-look', 'sure');
  await assistant.clock.install();
  await assistant.getByRole('button', { name: 'Bar', exact: true }).click();
  await expect(card.locator('.big-arrow')).toHaveAttribute('data-look', 'felt');
  const before = await turnOf(card);
  // A quarter turn to the right: alpha counts the other way round.
  await hold(111);
  await expect.poll(async () => turn((await turnOf(card)) - before)).toBeCloseTo(-90, 0);
  await expect(card.locator('.carry-plan svg[role=img]')).toBeVisible();
  await assistant.clock.runFor(62_000);
  await expect(card.locator('.big-arrow')).toHaveAttribute('data-look', 'sure');
  expect(await turnOf(card)).toBeCloseTo(before, 6);
  await expect(card.locator('.turn-line')).toHaveText('The arrow stands still: press what you face.');
});

test('[ASSIST8] a phone without a sensor says so, and the card works as before', async ({ evening }) => {
  const assistant = await evening.phone('assistant');
  await assistant.evaluate(() => {
    Object.defineProperty(globalThis, 'DeviceOrientationEvent', { value: undefined });
  });
  await assistant.locator('.nothing summary', { hasText: 'Step' }).click();
  await assistant.getByRole('button', { name: /^Arrow turns with the phone/ }).click();
  await expect(assistant.getByText('Not here: this phone tells of no turning.')).toBeVisible();
});

/** A voice of the test's own: it keeps what it was asked to say. Which phones have which voices is not ours to say. */
function giveVoice(): void {
  const said: string[] = [];
  const voices = [{ lang: 'en-GB', localService: true, name: 'Test voice', default: true, voiceURI: 'test' }];
  Object.assign(globalThis, { said });
  Object.defineProperty(globalThis, 'SpeechSynthesisUtterance', {
    value: class {
      constructor(readonly text: string) {}
    },
  });
  Object.defineProperty(globalThis, 'speechSynthesis', {
    value: {
      getVoices: () => voices,
      speak: ({ text }: { text: string }) => said.push(text),
      cancel: () => said.push('(hush)'),
      addEventListener: () => undefined,
    },
  });
}

const saidOn = (page: Page) => page.evaluate(() => (globalThis as unknown as { said: string[] }).said);

test('[ASSIST9] a new card is spoken once, again on request, and hushed when it goes', async ({
  evening,
}) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await assistant.addInitScript(giveVoice);
  await assistant.reload();
  await assistant.locator('.nothing summary', { hasText: 'Step' }).click();
  const key = assistant.getByRole('button', { name: /^Sentence into the ear/ });
  await expect(key).toHaveText('Sentence into the ear: off');
  await key.click();
  await callKey(lead, 29, -27);
  const spoken = 'K. Toward the bar, stop 1 metre short of it. 4 metres, about 6 steps';
  await expect.poll(() => saidOn(assistant)).toContain(spoken);
  await assistant.getByRole('button', { name: 'Say it again' }).click();
  const twice = (await saidOn(assistant)).filter((text) => text === spoken);
  expect(twice).toHaveLength(2);
  await lead.getByRole('button', { name: 'Withdraw' }).click();
  await expect(assistant.locator('.carry-card.is-withdrawn')).toBeVisible();
  expect((await saidOn(assistant)).at(-1)).toBe('(hush)');
});

test('[ASSIST9] a phone without an English voice says that it cannot speak', async ({ evening }) => {
  const assistant = await evening.phone('assistant');
  await assistant.addInitScript(() => {
    Object.defineProperty(globalThis, 'speechSynthesis', {
      value: {
        getVoices: () => [{ lang: 'fi-FI' }],
        cancel: () => undefined,
        addEventListener: () => undefined,
      },
    });
  });
  await assistant.reload();
  await assistant.locator('.nothing summary', { hasText: 'Step' }).click();
  await expect(assistant.getByText('this phone has no English voice')).toBeVisible();
});

test('[LEAD11] the other phone lost: the same carry by hand', async ({ evening }) => {
  const lead = await evening.phone('lead');
  const assistant = await evening.phone('assistant');
  await callKey(lead, -33, 21);
  await expectReach(lead, 'K', 'seen');
  await expect(lead.getByRole('button', { name: /hand signals/i })).toHaveCount(0);
  await assistant.close();
  await lead.getByRole('button', { name: 'Phone lost: hand signals' }).click();
  const signs = lead.locator('.hand-signals li');
  await expect(signs.first()).toContainText('1 finger: K');
  await expect(signs.nth(1)).toContainText(/^Point .*as they look at you$/);
  await expect(signs.nth(2)).toContainText(/steps?: /);
  await expect(signs.nth(3)).toContainText('Then point');
  await lead.getByRole('button', { name: 'Close' }).click();
  await lead.getByRole('button', { name: 'More' }).click();
  await expect(lead.getByRole('button', { name: 'Hand signals', exact: true })).toBeVisible();
});
