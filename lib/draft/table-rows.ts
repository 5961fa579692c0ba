import type { Row } from './text-rows';
import { withoutAsides } from './title-asides';

/** What a row of a table comes to. */
export type TableRow =
  | { readonly kind: 'head' }
  | { readonly kind: 'total' }
  | { readonly kind: 'ingredient'; readonly words: string };

interface Columns {
  readonly food: number;
  readonly amount: number;
  /** Unit of bare numbers, as the head says it. */
  readonly unit: string;
}

const FOOD_HEAD = /^(?:ingredients?|foods?|items?|product|what)$/;
const AMOUNT_HEAD = /^(?:amounts?|qty|quantity|weights?|measures?|grams?|g|ml|how much)\b/;
const RULE = /^[\s|:+=–—-]*$/;

/**
 * The rows of tables by their place in `rows`: parted by bars or by tabs, under a head that names a column of foods and
 * one of amounts; or without a head, in two columns of which one is an amount.
 * @example '| oats | 80 |' under '| Food | g |' // { kind: 'ingredient', words: '80 g oats' }
 */
export function tableRows(rows: readonly Row[]): ReadonlyMap<number, TableRow> {
  const found = new Map<number, TableRow>();
  let columns: Columns | null = null;
  let before = -2;
  rows.forEach(({ raw }, index) => {
    if (before !== index - 1) columns = null;
    const cells = cellsOf(raw) ?? commaCells(raw, columns);
    if (cells === null) return;
    before = index;
    const head = headOf(cells);
    if (RULE.test(raw)) found.set(index, { kind: 'head' });
    else if (head) {
      columns = head;
      found.set(index, { kind: 'head' });
    } else {
      const row = columns ? byHead(cells, columns) : bare(cells);
      if (row) found.set(index, row);
    }
  });
  for (const [index] of found) if (isTitle(rows, found, index)) found.delete(index);
  return found;
}

/** A line alone with what a dish makes behind a bar is no row: "Bean soup | 4 servings". */
function isTitle(
  rows: readonly Row[],
  found: ReadonlyMap<number, TableRow>,
  index: number,
): boolean {
  if (found.has(index - 1) || found.has(index + 1)) return false;
  const { asides } = withoutAsides(rows[index]?.body ?? '');
  return asides.includes('portions') || asides.includes('vessels');
}

function cellsOf(raw: string): string[] | null {
  const divider = raw.includes('\t')
    ? '\t'
    : raw.startsWith('|')
      ? '|'
      : raw.includes(' | ')
        ? '|'
        : null;
  if (divider === null || raw.length > 600) return null;
  const inner = divider === '|' ? raw.replace(/^\||\|$/g, '') : raw;
  return inner.split(divider).map((cell) => cell.replaceAll('*', '').trim());
}

/** Cells parted by commas count only under a head, or as one. */
function commaCells(raw: string, columns: Columns | null): string[] | null {
  if (!raw.includes(',') || raw.length > 600) return null;
  const cells = raw.split(',').map((cell) => cell.replace(/^"|"$/g, '').trim());
  return columns !== null || headOf(cells) ? cells : null;
}

function headOf(cells: readonly string[]): Columns | null {
  const folded = cells.map((cell) => cell.toLowerCase());
  const food = folded.findIndex((cell) => FOOD_HEAD.test(cell));
  const amount = folded.findIndex((cell) => AMOUNT_HEAD.test(cell));
  if (food < 0 || amount < 0 || food === amount) return null;
  const named = folded[amount] ?? '';
  const unit = /\bml\b/.test(named) ? ' ml' : /\b(?:grams?|g)\b/.test(named) ? ' g' : '';
  return { food, amount, unit };
}

function byHead(cells: readonly string[], { food, amount, unit }: Columns): TableRow | null {
  const name = cells[food] ?? '';
  const much = cells[amount] ?? '';
  if (/^(?:totals?|sum|all|per (?:serving|portion))\b/i.test(name)) return { kind: 'total' };
  if (!/\p{L}/u.test(name)) return null;
  const bareNumber = /^[\d.,]+$/.test(much);
  const words = much === '' ? name : `${much}${bareNumber ? unit : ''} ${name}`;
  return { kind: 'ingredient', words };
}

/** Two columns without a head: an amount, and what it is of. */
function bare(cells: readonly string[]): TableRow | null {
  const full = cells.filter((cell) => cell !== '');
  if (full.length !== 2) return null;
  const amount = full.findIndex((cell) => /^[\d½¼¾⅓⅔][\d\s.,/½¼¾⅓⅔]*\s?\p{L}{0,12}$/u.test(cell));
  const food = full[1 - amount] ?? '';
  if (amount < 0 || !/\p{L}{2}/u.test(food) || /^\d/.test(food)) return null;
  return { kind: 'ingredient', words: `${full[amount] ?? ''} ${food}` };
}
