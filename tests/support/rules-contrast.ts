/**
 * Relative luminance of a colour, WCAG 2.2, "relative luminance" (with the threshold 0.04045 of its 2021
 * correction, as in IEC 61966-2-1).
 *
 * @param hex `#rrggbb`
 * @returns 0 for black to 1 for white
 * @throws on anything but six hexadecimal digits after a `#`
 */
function luminance(hex: string): number {
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (!digits) throw new Error(`"${hex}" is not written #rrggbb.`);
  const [red = 0, green = 0, blue = 0] = digits.slice(1).map((pair) => {
    const share = Number.parseInt(pair, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, WCAG 2.2, "contrast ratio": (L1 + 0.05)/(L2 + 0.05), 1 to 21. */
export function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

/** The custom properties of each light level: those of `:root`, with those that a level changes laid over them. */
export function tokensByLevel(css: string): Map<string, ReadonlyMap<string, string>> {
  const levels = new Map<string, ReadonlyMap<string, string>>();
  const plain = css.replace(/\/\*[\s\S]*?\*\//g, '');
  for (const [, level, body] of plain.matchAll(/:root(?:\[data-light="(\w+)"\])?\s*\{([^}]*)\}/g)) {
    const base = levels.get('normal') ?? new Map();
    const own = [...(body ?? '').matchAll(/(--[\w-]+):\s*([^;]+);/g)].map(
      ([, name, value]) => [name ?? '', (value ?? '').trim()] as const,
    );
    levels.set(level ?? 'normal', new Map([...base, ...own]));
  }
  return levels;
}
