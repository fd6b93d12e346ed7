import { encode } from 'uqr';

/** Light modules around the code, as ISO/IEC 18004 asks for. */
const QUIET_ZONE = 4;

/*
 * Colours are set outright, from the fixed part of the 256-colour table, which themes leave alone: what is dark
 * on the screen is dark in the code whether the terminal is black or white.
 */
const DARK_ON_LIGHT = '\u001b[38;5;16;48;5;231m';
const PLAIN = '\u001b[0m';

/** Two rows of modules stand in one row of signs, upper and lower half: [upper dark][lower dark]. */
const signOf = (upper: boolean, lower: boolean): string => (upper ? (lower ? '█' : '▀') : lower ? '▄' : ' ');

/** A QR code for the terminal, to be scanned off the screen: lines that each set and reset their colours. */
export function terminalQr(text: string): string {
  const { data, size } = encode(text, { border: QUIET_ZONE, ecc: 'L' });
  const isDark = (row: number, column: number) => data[row]?.[column] ?? false;
  const lines: string[] = [];
  for (let row = 0; row < size; row += 2) {
    let line = '';
    for (let column = 0; column < size; column += 1)
      line += signOf(isDark(row, column), isDark(row + 1, column));
    lines.push(`${DARK_ON_LIGHT}${line}${PLAIN}`);
  }
  return lines.join('\n');
}
