import { unitFactor } from '#lib/claims/judge/stated-unit';
import { amountText } from '#lib/claims/judge/nutrient-words';
import { saidNutrient, type NutrientStatement } from '#lib/claims/judge/said-number';
import { isSpoken } from '#lib/claims/judge/spoken';
import type { SaidInterval } from '#lib/claims/said-interval';
import type { Hedge, Scope } from '#lib/claims/statement';
import type { PlacedStatement } from '#lib/claims/contradict/contradiction';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printTo } from '#lib/units/print';

/** What is said of a nutrient, as all that its words allow. */
export interface SaidValue {
  readonly row: PlacedStatement & { readonly statement: NutrientStatement };
  readonly nutrient: Nutrient;
  readonly scope: Scope;
  /** In the nutrient’s own unit. */
  readonly interval: SaidInterval;
  /** The number itself, in the nutrient’s own unit. */
  readonly low: number;
  readonly high: number;
  /** “about 640 calories”. */
  readonly text: string;
  /** The dish; 'day'; or a stretch of one text where nobody knows the dish. */
  readonly thing: string;
  readonly segmentId: string | null;
}

/** Before which words a stretch of a text may still be about the same thing, where no dish is known: UTF-16 units. */
const NEAR = 300;

const HEDGED: Readonly<Record<Hedge, string>> = {
  none: '',
  between: '',
  about: 'about ',
  justOver: 'just over ',
  almost: 'almost ',
  under: 'under ',
  atLeast: 'at least ',
  atMost: 'at most ',
};

/**
 * Amounts of nutrients that are said of a dish, a part of it or the day, each with all that its words allow: what is
 * compared, of one ingredient, a share, or could be read in two ways is left out.
 */
export function saidValues(rows: readonly PlacedStatement[], region: Region): SaidValue[] {
  const things = thingsOf(rows);
  return rows.flatMap((row) => {
    const value = isAmount(row) ? saidValue(row, region, things.get(row.id) ?? '') : null;
    return value ? [value] : [];
  });
}

/**
 * What each statement is about, by its id: its dish; where nobody knows it, the stretch of its text in which one number
 * follows soon on the other.
 */
export function thingsOf(rows: readonly PlacedStatement[]): ReadonlyMap<string, string> {
  const things = new Map<string, string>();
  const runs = new Map<string, { readonly end: number; readonly run: number }>();
  for (const { id, statement, place } of rows) {
    const before = runs.get(place.textId);
    const near = before !== undefined && statement.start - before.end <= NEAR;
    const run = before === undefined ? 0 : near ? before.run : before.run + 1;
    runs.set(place.textId, { end: statement.end, run });
    things.set(id, place.segmentId ?? `${place.textId}#${run}`);
  }
  return things;
}

const SCOPES: ReadonlySet<Scope> = new Set([
  'dish',
  'whole',
  'portion',
  'each',
  'half',
  'slice',
  'per100g',
  'day',
]);

type NutrientRow = SaidValue['row'];

function isAmount(row: PlacedStatement): row is NutrientRow {
  const { statement } = row;
  if (statement.kind !== 'nutrient' || statement.unsure || statement.against) return false;
  if (statement.unit === '%' || statement.unit === '%DV' || statement.every) return false;
  return SCOPES.has(statement.scope) || isTitle(row);
}

/** Titles and thumbnails say what a video is about, often without of what. */
export const isTitle = ({ place }: Pick<PlacedStatement, 'place'>): boolean =>
  place.kind === 'title' || place.kind === 'thumbnail';

function saidValue(row: NutrientRow, region: Region, thing: string): SaidValue | null {
  const { statement, place } = row;
  const factor = unitFactor(statement.nutrient, statement.unit, region);
  if (factor === null) return null;
  const said = saidNutrient(statement, factor, isSpoken(place.kind));
  const interval = { ...said, from: said.from * factor, to: said.to * factor };
  const { nutrient, scope, low, high, hedge } = statement;
  const segmentId = scope === 'day' ? null : place.segmentId;
  const number = low === high ? count(low) : `${count(low)} to ${count(high)}`;
  return {
    ...{ row, nutrient, scope, interval, segmentId },
    low: low * factor,
    high: high * factor,
    text: amountText(`${HEDGED[hedge]}${number}`, nutrient, statement.unit, region),
    thing: scope === 'day' ? 'day' : thing,
  };
}

/** A number as it is said, with a comma between thousands. */
function count(value: number): string {
  const text = printTo(value, 0.01).replace(/\.?0+$/, '');
  const [whole = '', ...rest] = text.split('.');
  return [whole.replace(/\B(?=(\d{3})+$)/g, ','), ...rest].join('.');
}

/** A value that was worked out, as it is written: `ofValue(320, 'energyKcal', 'US')` → '320 calories'. */
export function ofValue(value: number, nutrient: Nutrient, region: Region): string {
  const { unit } = NUTRIENTS[nutrient];
  const step = unit === 'g' && value < 20 ? 0.1 : 1;
  const number = count(Number(printTo(value, step)));
  return unit === 'kcal' || unit === 'kJ' || unit === 'g' || unit === 'mg' || unit === 'µg'
    ? amountText(number, nutrient, unit, region)
    : `${number} ${unit}`;
}

type Ends = Pick<SaidInterval, 'from' | 'to' | 'fromOpen' | 'toOpen'>;

/** Whether nothing can be in both: what touches may be the same. */
export function areApart(a: Ends, b: Ends): boolean {
  return isBelow(a, b) || isBelow(b, a);
}

function isBelow({ to, toOpen }: Ends, { from, fromOpen }: Ends): boolean {
  if (to === Infinity || from === -Infinity) return false;
  const slack = 1e-9 * Math.max(1, Math.abs(to), Math.abs(from));
  return to < from - slack || (Math.abs(to - from) <= slack && (toOpen || fromOpen));
}

/** An interval times a range of positive numbers. */
export function timesRange(
  { from, to }: Pick<SaidInterval, 'from' | 'to'>,
  low: number,
  high: number,
): SaidInterval {
  const least = Math.max(0, from);
  return { from: least * low, to: to * high, fromOpen: false, toOpen: false, oneSided: false };
}
