import type { Page } from '@playwright/test';

/** The picture's size, and the room's walls in it, px: 20 px are drawn for a metre, 40 by 25 m. */
export const PICTURE = { width: 1000, height: 700, left: 100, top: 100, right: 900, bottom: 600 } as const;

/** A picture of a plan as a venue may send it, as a file: the walls of one rectangular room on white paper. */
export async function pngOfRoom(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const url = await page.evaluate((picture) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [picture.width, picture.height];
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('this browser cannot draw');
    pen.fillStyle = 'white';
    pen.fillRect(0, 0, picture.width, picture.height);
    pen.lineWidth = 6;
    pen.strokeRect(picture.left, picture.top, picture.right - picture.left, picture.bottom - picture.top);
    return canvas.toDataURL('image/png');
  }, PICTURE);
  return {
    name: 'plan.png',
    mimeType: 'image/png',
    buffer: Buffer.from(url.slice(url.indexOf(',') + 1), 'base64'),
  };
}
