import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Rows that a day has at least, and by which share their energy may be off the total, as all are rounded. */
const ROWS = 2;
const ROUNDED = 0.01;

interface Row {
  readonly line: number;
  readonly cells: readonly Quantity[];
  readonly energy: number;
}

/**
 * Rows of a day's list whose energy comes to that of a row below them are of a dish each, and none of the day:
 * 'WHAT I ATE TODAY / oats 390 cal, 22 g protein / tacos 510 cal, 34 g protein / TOTAL 900 cal'.
 */
export function sayRowsOfDay(text: Text, quantities: readonly Quantity[]): void {
  if (text.spoken || !text.marks.all('scope').some(({ role }) => role.scope === 'day')) return;
  const rows = rowsOf(text, quantities);
  rows.forEach((total, index) => {
    let sum = 0;
    for (let at = index - 1; at >= 0; at -= 1) {
      sum += rows[at]?.energy ?? 0;
      if (sum > total.energy * (1 + ROUNDED)) return;
      if (index - at < ROWS || sum < total.energy * (1 - ROUNDED)) continue;
      for (const row of rows.slice(at, index)) for (const cell of row.cells) sayDish(cell);
      return;
    }
  });
}

/** 'oats 390 cal' in a row of its own is a meal, and no ingredient. */
function sayDish(quantity: Quantity): void {
  if (quantity.said?.kind !== 'nutrient') return;
  const { food: _, ...said } = quantity.said;
  if (said.scope === undefined || said.scope === 'ingredient')
    quantity.said = { ...said, scope: 'dish' };
}

/** Lines with one number of calories, named or not, in their order. */
function rowsOf({ sentences }: Text, quantities: readonly Quantity[]): Row[] {
  const lines = new Map<number, Quantity[]>();
  for (const quantity of quantities) {
    if (quantity.killed !== null || quantity.said?.kind !== 'nutrient') continue;
    const line = sentences.of[quantity.from] ?? 0;
    lines.set(line, [...(lines.get(line) ?? []), quantity]);
  }
  return [...lines].flatMap(([line, cells]) => {
    const [first, ...others] = cells.filter(({ said }) => said?.nutrient === 'energyKcal');
    return first && others.length === 0 ? [{ line, cells, energy: first.low }] : [];
  });
}
