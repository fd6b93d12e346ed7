const UNITS: Record<string, string> = { m: 'metres', cm: 'centimetres', ft: 'feet', in: 'inches' };

const thirds = (whole: string, part: string) => (whole ? `${whole} and ${part}` : ` ${part}`);

/** Words as a voice reads them right: signs and short units written out, one of a unit in the singular. */
export function aloud(text: string): string {
  return text
    .replace(/≈/g, 'about')
    .replace(/(\d)\s*°/g, '$1 degrees')
    .replace(/(\d?) ?⅓/g, (_, whole: string) => thirds(whole, 'one third'))
    .replace(/(\d?) ?⅔/g, (_, whole: string) => thirds(whole, 'two thirds'))
    .replace(/(^|[^\d.])1 m\b/g, '$11 metre')
    .replace(/(\d) (m|cm|ft|in)\b/g, (_, digit: string, unit: string) => `${digit} ${UNITS[unit]}`);
}

/** A card as it is spoken: which stand, what to do, how far. */
export function spokenCard(
  letter: string,
  way: {
    readonly kind: 'stay' | 'way' | 'none';
    readonly lines: readonly string[];
    readonly distance: { readonly main: string; readonly steps: string | null };
    readonly whole: string | null;
  },
): string {
  const { main, steps } = way.distance;
  const far = way.kind === 'way' ? [steps ? `${main}, ${steps}` : main] : [];
  return [letter, ...way.lines, ...far, ...(way.whole ? [way.whole] : [])].map(aloud).join('. ');
}
