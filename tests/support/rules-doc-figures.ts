import { TIES, type Tie } from './rules-figure-table.ts';
import { type Figure, figuresIn, isSameQuantity, type Quantity } from './rules-figures.ts';
import { OUTSIDES, type Outside } from './rules-figures-outside.ts';

const TABLE = 'tests/support/rules-figure-table.ts';
const ELSE = 'tests/support/rules-figures-outside.ts';

function agrees(figure: Figure, tie: Tie): boolean {
  if (!tie.near.test(figure.context)) return false;
  const is = tie.is();
  if (tie.atLeast) return figure.unit === is.unit && figure.value <= is.value;
  return isSameQuantity(figure, is);
}

function isOutside(figure: Figure, { near, says }: Outside): boolean {
  if (!near.test(figure.context)) return false;
  return says === 'any' || says.some((quantity) => isSameQuantity(figure, quantity));
}

function inWords({ value, unit }: Quantity): string {
  return `${Number(value.toFixed(3))} ${unit}`.trim();
}

function advice(figure: Figure, ties: readonly Tie[]): string {
  const near = ties.filter((tie) => tie.near.test(figure.context) && tie.near.source !== '.');
  const known = near
    .map((tie) => ({ from: tie.from, is: tie.is() }))
    .filter(({ is }) => is.unit === figure.unit)
    .map(({ from, is }) => `${inWords(is)} (${from})`);
  const code = known.length > 0 ? ` Beside these words the code has ${[...new Set(known)].join(', ')}.` : '';
  return `${code} If it is another fact, tie it to its constant in ${TABLE}; if it is none of ours, say why in ${ELSE}.`;
}

/**
 * Figures of a document that are tied neither to a number of the code nor to a reason why they are none.
 *
 * @returns one sentence for each, with what the code has beside the same words
 */
export function looseFigures(
  document: string,
  markdown: string,
  ties: readonly Tie[] = TIES,
  outsides: readonly Outside[] = OUTSIDES,
): string[] {
  return figuresIn(markdown)
    .filter((figure) => !ties.some((tie) => agrees(figure, tie)))
    .filter((figure) => !outsides.some((outside) => isOutside(figure, outside)))
    .map(
      (figure) =>
        `${document}:${figure.line} "${figure.said}" is not tied to the code.${advice(figure, ties)}`,
    );
}
