/** Signs in front of a line that belong to a list and not to its words. */
const BULLET = /^(?:[\s|>•·▪◦‣●○■□☐☑✓✔–—−*+-]|\[[ xX]?\])+(?=[\s\p{L}\d([{"'“„@~#])/u;
const NUMBERING = /^(?:\(\d{1,3}\)|\d{1,3}\.?\)|\d{1,3}\.(?=\s)|#\d{1,3}[.:)]?(?=\s)|[a-z]\))\s*(?=\S)/iu;
const LEADING_NUMBER =
  /^(\d{1,3})(?:\s*[-–—:|]\s+|\s*\t\s*|\s+)(?!\s*(?:[ap]\.?\s?m|uhr|h|o['’]?clock)(?!\p{L}))/iu;

/** @returns the line without tabs and spaces of other alphabets, and without a bullet */
export function withoutBullet(line: string): string {
  const plain = line
    .replace(/[\u00a0\u2000-\u200a\u202f\u3000]/gu, ' ')
    .replace(/[\u200b\u200e\u200f\ufeff\r]/gu, '');
  return plain.replace(BULLET, '').trim();
}

/** How long the numbering in front of a line is [signs]: "1. ", "2) ", "(3)"; with `counted` also a bare "4 ". */
export function numberingLength(body: string, counted: boolean): number {
  const written = NUMBERING.exec(body) ?? (counted ? LEADING_NUMBER.exec(body) : null);
  return written?.[0].length ?? 0;
}

/** Whether the bare numbers in front of the lines count them: 1, 2, 3 … in the order of the text, two at least. */
export function areCounted(bodies: readonly string[]): boolean {
  const numbers = bodies.flatMap((body) => LEADING_NUMBER.exec(body)?.[1] ?? []);
  return numbers.length > 1 && numbers.every((number, index) => Number(number) === index + 1);
}
