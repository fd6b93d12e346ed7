/** Larger than this on its long side a picture tells no more about a cheek, and costs memory, px. */
const LONGEST_PX = 1600;

/**
 * Draws a picture from a file on a canvas, made smaller.
 *
 * @returns null, or why it could not be done, in plain words
 */
export async function openPicture(file: File, canvas: HTMLCanvasElement): Promise<string | null> {
  try {
    const bitmap = await createImageBitmap(file);
    const scale = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
    canvas.width = Math.max(1, Math.round(bitmap.width * scale));
    canvas.height = Math.max(1, Math.round(bitmap.height * scale));
    const context = canvas.getContext('2d', { willReadFrequently: true });
    context?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    return context ? null : 'This phone cannot draw the picture.';
  } catch {
    return `“${file.name}” cannot be read as a picture. A JPEG from the camera can; a raw file cannot.`;
  }
}
