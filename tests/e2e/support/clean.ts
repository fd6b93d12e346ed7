import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

const LEAST_PX = 60;
/** A phone held upright, one held across, and the narrowest that is still in use. */
export const FIT_SCREENS = [
  { name: '390 × 844', width: 390, height: 844 },
  { name: '844 × 390', width: 844, height: 390 },
  { name: '320 × 640', width: 320, height: 640 },
] as const;

/** Controls that a thumb could miss: smaller than 60 px in either direction. */
function smallControls(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const small: string[] = [];
    for (const control of document.querySelectorAll<HTMLElement>('button, a, input, select, summary')) {
      const box = (control.closest('label') ?? control).getBoundingClientRect();
      if (box.width === 0 || control.closest('.pair-link')) continue;
      if (box.width < least - 0.5 || box.height < least - 0.5)
        small.push(
          `${control.textContent || control.getAttribute('aria-label')} ${box.width} × ${box.height}`,
        );
    }
    return small;
  }, LEAST_PX);
}

/** Keys and cells of the panel that is open whose words are wider than they are. */
function cutWords(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        ':is(.sheet-panel, .plan-editor) :is(button, td, th, li, p, label, legend, output)',
      ),
    ]
      .filter((element) => element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0)
      .map((element) => `${element.textContent} ${element.scrollWidth} in ${element.clientWidth}`),
  );
}

/** axe finds nothing, a thumb hits every control, no word is cut, and nothing runs out of the side. */
export async function expectClean(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`),
    where,
  ).toEqual([]);
  await expectFits(page, where);
}

/** A thumb hits every control, no word is cut, and nothing runs out of the side. */
export async function expectFits(page: Page, where: string): Promise<void> {
  expect(await smallControls(page), where).toEqual([]);
  expect(await cutWords(page), where).toEqual([]);
  await expectNoSideways(page, where);
}

/** Neither the page nor the body of a panel can be pushed sideways. */
export async function expectNoSideways(page: Page, where: string): Promise<void> {
  const sideways = await page.evaluate(() =>
    [
      document.documentElement,
      ...document.querySelectorAll('.sheet-body, .editor-hand, .editor-card, .card-body, .nothing'),
    ].map((element) => element.scrollWidth - Math.min(innerWidth, element.clientWidth)),
  );
  expect(Math.max(...sideways), where).toBeLessThanOrEqual(0);
}
