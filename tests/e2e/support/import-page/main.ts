import type { PlanFile } from '../../../../client/import/plan-file.ts';
import { readPlanFile } from '../../../../client/import/read-plan-file.ts';

/** How dark a picture is at its middle and in its corner, 0 to 255, so that a test can see that something was drawn. */
function pixels({ picture, widthPx, heightPx }: PlanFile & { kind: 'picture' }) {
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d');
  context?.drawImage(picture, 0, 0);
  const at = (x: number, y: number) => Array.from(context?.getImageData(x, y, 1, 1).data.slice(0, 3) ?? []);
  return { middle: at(widthPx >> 1, heightPx >> 1), corner: at(1, 1) };
}

const input = document.querySelector('input');
const output = document.querySelector('output');
input?.addEventListener('change', async () => {
  const file = input.files?.[0];
  if (!file || !output) return;
  const read = await readPlanFile(file);
  output.textContent = JSON.stringify(read.kind === 'picture' ? { ...read, ...pixels(read) } : read);
});
