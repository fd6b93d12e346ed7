import type { CDPSession, Locator, Page } from '@playwright/test';
import { expect } from '@playwright/test';

/** The key of a stand on the lead's face; `data-reach` says how far its call got. */
export const standKey = (lead: Page, letter: string): Locator =>
  lead.locator('.stand-key').filter({ has: lead.locator('b', { hasText: new RegExp(`^${letter} `) }) });

/** Waits until the call of a stand has got as far as this. */
export const expectReach = (lead: Page, letter: string, reach: string | RegExp) =>
  expect(standKey(lead, letter)).toHaveAttribute('data-reach', reach);

/** A finger on a page's screen; Chromium gets what a touch screen would give it. */
export class Finger {
  readonly #session: CDPSession;
  constructor(session: CDPSession) {
    this.#session = session;
  }
  static async on(page: Page): Promise<Finger> {
    return new Finger(await page.context().newCDPSession(page));
  }
  async #send(type: string, points: readonly { x: number; y: number }[]): Promise<void> {
    await this.#session.send('Input.dispatchTouchEvent', {
      type: type as 'touchStart',
      touchPoints: points.map((point, id) => ({ ...point, id })),
    });
  }
  down = (...points: readonly { x: number; y: number }[]) => this.#send('touchStart', points);
  move = (...points: readonly { x: number; y: number }[]) => this.#send('touchMove', points);
  up = () => this.#send('touchEnd', []);
  cancel = () => this.#send('touchCancel', []);
}

/** A point of the plan, as parts of its width and height. */
export async function planPoint(page: Page, across: number, down: number): Promise<{ x: number; y: number }> {
  const box = await page.locator('.plan').boundingBox();
  if (!box) throw new Error('no plan on the screen');
  return { x: box.x + box.width * across, y: box.y + box.height * down };
}

/** Moves the mark of the chosen stand by whole decimetres with the arrow keys, from where it is meant to be. */
export async function moveByKeys(lead: Page, rightDm: number, downDm: number): Promise<void> {
  const cross = lead.locator('.arrow-key');
  await cross.focus();
  const press = async (key: string, decimetres: number) => {
    for (let left = decimetres; left > 0; left -= left >= 10 ? 10 : 1)
      await cross.press(left >= 10 ? `Shift+${key}` : key);
  };
  await press(rightDm > 0 ? 'ArrowRight' : 'ArrowLeft', Math.abs(rightDm));
  await press(downDm > 0 ? 'ArrowDown' : 'ArrowUp', Math.abs(downDm));
}
