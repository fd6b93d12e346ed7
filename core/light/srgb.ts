/**
 * Linear light of an encoded sRGB value: c/12.92 up to 0.04045, ((c + 0.055)/1.055)^2.4 above.
 *
 * @param encoded a channel, 0 to 1 (an 8-bit value over 255); held to that range
 * @returns linear light, 0 to 1 [1]
 * @source srgb
 */
export function linearFromSrgb(encoded: number): number {
  const c = Math.max(0, Math.min(1, encoded));
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

/**
 * Encoded sRGB value of linear light: 12.92·l up to 0.0031308, 1.055·l^(1/2.4) − 0.055 above.
 *
 * @param linear linear light, 0 to 1 [1]; held to that range
 * @returns a channel, 0 to 1; times 255 it is an 8-bit value
 * @source srgb
 */
export function srgbFromLinear(linear: number): number {
  const l = Math.max(0, Math.min(1, linear));
  return l <= 0.0031308 ? l * 12.92 : 1.055 * l ** (1 / 2.4) - 0.055;
}
