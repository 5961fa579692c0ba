import type { Cell } from '#lib/foods/food';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { parsePrinted, printedText } from '#lib/units/printed';

/**
 * Reads a value as a label prints it, with its digits: `12`, `0.0`, `<1`, `less than 1 g`, `trace`; an empty
 * text is missing, never 0. The nutrient's own unit may stand behind. Null where it is none of these.
 * `readCell('0.50', 'fat')` → `{ kind: 'eq', mantissa: 50, scale: 2 }`.
 */
export function readCell(text: string, nutrient: Nutrient): Cell | null {
  const plain = text.trim().toLowerCase();
  if (plain === '') return { kind: 'missing' };
  if (/^(?:tr|trace|traces)$/.test(plain)) return { kind: 'trace' };
  const [, less = '', digits = '', unit = ''] =
    /^(<|less than)? *([\d.,]+) *([a-zµ]*)$/.exec(plain) ?? [];
  if (unit !== '' && !spellings(NUTRIENTS[nutrient].unit).includes(unit)) return null;
  const printed = parsePrinted(digits);
  if (!printed || printed.mantissa < 0 || printed.scale > MOST_DECIMALS) return null;
  return { kind: less === '' ? 'eq' : 'lessThan', ...printed };
}

/** Decimals that a cell holds at most. */
const MOST_DECIMALS = 6;

function spellings(unit: string): readonly string[] {
  if (unit === 'µg') return ['µg', 'mcg', 'ug'];
  return unit === 'kcal' ? ['kcal', 'cal', 'calories'] : [unit.toLowerCase()];
}

/** A cell as it can be typed again; a blank stays empty. `cellTyped({ kind: 'lessThan', mantissa: 1, scale: 0 })` → `'<1'`. */
export function cellTyped(cell: Cell): string {
  switch (cell.kind) {
    case 'missing':
      return '';
    case 'trace':
      return 'trace';
    case 'lessThan':
      return `<${printedText(cell)}`;
    case 'eq':
      return printedText(cell);
  }
}

/** A cell as shown: its digits with the error that its source prints, or the words "no value". `'12.4 ± 0.3'` */
export function cellShown(cell: Cell): string {
  if (cell.kind === 'missing') return 'no value';
  const error = cell.kind === 'eq' ? cell.plusMinus : undefined;
  return error ? `${cellTyped(cell)} ± ${printedText(error)}` : cellTyped(cell);
}
