import { LONGEST_PX } from './plan-file.ts';

/**
 * A picture from a file, upright as its camera says, made smaller where it is larger than anyone traces on.
 *
 * @throws where the browser cannot read the picture
 */
export async function openBitmap(file: Blob): Promise<ImageBitmap> {
  const whole = await createImageBitmap(file);
  const scale = LONGEST_PX / Math.max(whole.width, whole.height);
  if (scale >= 1) return whole;
  try {
    return await createImageBitmap(whole, {
      resizeWidth: Math.max(1, Math.round(whole.width * scale)),
      resizeHeight: Math.max(1, Math.round(whole.height * scale)),
      resizeQuality: 'high',
    });
  } finally {
    whole.close();
  }
}
