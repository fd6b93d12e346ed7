import { test as base, type Page } from '@playwright/test';
import * as Y from 'yjs';
import { createServer, type HushmarkServer } from '../../../server/create-server.ts';
import { demoNight } from '../../../server/nights/demo-night.ts';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import { type Night, readNight } from '../../../shared/document/snapshot.ts';
import { pairFragment } from '../../../shared/messages/http.ts';

const PHONE = { width: 390, height: 844 } as const;

export interface Screen {
  readonly width: number;
  readonly height: number;
  readonly touch?: boolean;
}

/** A server with the demo night, and phones that pair with it as people do. */
export interface Evening {
  readonly server: HushmarkServer;
  /** Opens a phone of its own (its own storage, its own cookies) and pairs it. */
  phone(role: 'lead' | 'assistant', screen?: Screen): Promise<Page>;
  /** The night as it is on the server's disk. */
  night(): Promise<Night>;
}

/** Follows a pairing link, gives a name and presses Join. */
export async function join(page: Page, link: string, role: 'lead' | 'assistant'): Promise<void> {
  await page.goto(link);
  await page.getByRole('textbox').fill(role === 'lead' ? 'Mika' : 'Jo');
  await page.getByRole('button', { name: 'Join' }).click();
  await page
    .locator(`.${role}-face .stand-key, .${role}-face .nothing, .${role}-face .carry-card`)
    .first()
    .waitFor();
}

export const test = base.extend<{ evening: Evening }>({
  evening: async ({ browser }, use) => {
    const store = createMemoryStore();
    const server = await createServer({
      port: 0,
      store,
      clientDirectory: `${import.meta.dirname}/../../../.build/client`,
      firstNight: demoNight('2026-05-16'),
    });
    const id = server.nights()[0]?.id;
    if (!id) throw new Error('the server holds no night');
    const closers: (() => Promise<void>)[] = [];
    await use({
      server,
      phone: async (role, screen = PHONE) => {
        const touch = screen.touch ?? true;
        const context = await browser.newContext({
          viewport: { width: screen.width, height: screen.height },
          hasTouch: touch,
          isMobile: touch,
        });
        closers.push(() => context.close());
        const page = await context.newPage();
        await join(page, `${server.url}/${pairFragment(server.mint(id, role))}`, role);
        return page;
      },
      night: async () => {
        const doc = new Y.Doc();
        for (const update of (await store.loadNight(id)).updates) Y.applyUpdate(doc, update);
        return readNight(doc);
      },
    });
    for (const close of closers) await close();
    await server.close();
  },
});
