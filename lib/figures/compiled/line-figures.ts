import { CELL } from '#lib/figures/compiled/composition';
import { figuresFrom, figuresInNumbers, type Figures } from '#lib/figures/compiled/figures';
import type { CompiledLine } from '#lib/figures/compiled/line';
import type { Product } from '#lib/figures/compiled/summand';
import { listsOf } from '#lib/figures/compiled/lists';
import type { Panel } from '#lib/figures/compiled/panel';
import type { Sums } from '#lib/figures/compiled/sums';
import { SUM } from '#lib/figures/compiled/tables';
import { figureOf } from '#lib/figures/parts';
import type { Nutrient } from '#lib/foods/nutrients';
import { factorErrors } from '#lib/units/factor';

/** All figures of one ingredient by itself. */
export function lineFigures(compiled: CompiledLine, panel: Panel): Figures {
  const { products, byTerms, parts } = compiled;
  const [plain] = products.length === 1 && products[0]?.of.only === null ? products : [null];
  const { length } = panel.nutrients;
  const byRules = (nutrient: Nutrient, place: number) => figureOf(nutrient, parts(place));
  if (!plain) return figuresFrom(panel, byRules);
  const sources = (compiled.sources ??= productSources(plain));
  const lists = (compiled.lists ??= listsOf([compiled], length));
  return figuresInNumbers(panel, productSums(plain, length), 1, lists, sources, byTerms, byRules);
}

/** The row of one ingredient between its numbers and its figures; as long as the longest panel needs. */
let room = new Float64Array(0);

/** One amount of one food, in the row of a sum: that of the last one, no longer read. */
function productSums({ factor, of }: Product, length: number): Pick<Sums, 'row' | 'at'> {
  const variance = SUM * length;
  const excess = variance + length;
  const end = excess + length;
  const at = { variance, excess, room: end, amounts: end, joints: end, pairs: end, sources: end };
  if (room.length < end) room = new Float64Array(end);
  const row = room;
  const { numbers } = factor;
  const [value, low, high] = [numbers[0] ?? 0, numbers[1] ?? 0, numbers[2] ?? 0];
  const [middle, reach] = [numbers[3] ?? 0, numbers[4] ?? 0];
  const { all, own } = factorErrors(factor);
  const more = Math.max(0, reach - high);
  for (let place = 0; place < length; place += 1) {
    const [to, from] = [SUM * place, CELL * place];
    const cell = of.middles[place] ?? 0;
    row[to] = value * (of.cells[from] ?? 0);
    row[to + 1] = low * (of.cells[from + 1] ?? 0);
    row[to + 2] = high * (of.cells[from + 2] ?? 0);
    row[to + 3] = middle * cell;
    row[variance + place] = (middle * middle + all) * (of.cells[from + 3] ?? 0) + own * cell * cell;
    row[excess + place] = more * (of.cells[from + 2] ?? 0);
  }
  for (const { place, amount } of of.excess) {
    row[excess + place] = (row[excess + place] ?? 0) + reach * amount;
  }
  return { row, at: { ...at, end } };
}

function productSources({ factor, of }: Product): readonly (readonly string[])[] {
  if (factor.none) return of.ids.map(() => []);
  const amount = [...factor.ids].sort();
  return of.ids.map((ids) => (ids.length === 0 ? ids : [...amount, ...ids].sort()));
}
