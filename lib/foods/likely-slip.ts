import { fromNutrients } from '#lib/foods/check-label-energy';
import { labelProblems } from '#lib/foods/check-label';
import { checkTableEnergy } from '#lib/foods/energy-check';
import type { FoodVersion } from '#lib/foods/food';
import { columnsOf } from '#lib/foods/label-column';
import { labelInterval, secondColumnInterval } from '#lib/foods/label-rounding';
import { isNutrient, NUTRIENTS } from '#lib/foods/nutrients';
import { slipEdits, type SlipChange, type SlipEdit, type SlipKind } from '#lib/foods/slip-edits';
import type { Problem } from '#lib/result';
import { cellOf } from '#lib/foods/cell-of';
import type { Interval } from '#lib/units/interval';

/** A slip that would explain why a label cannot be, and how its numbers would read without it. */
export interface LikelySlip {
  readonly kind: SlipKind;
  /** One number, or the two that stand in each other's line. */
  readonly changes: readonly SlipChange[];
  /** "protein 2.4 looks like 24". */
  readonly message: string;
}

/**
 * How unlikely each kind of slip is beside a slipped decimal, as minus the logarithm of its odds (common
 * practice, no source; chosen over generated labels).
 */
const UNLIKELY: Readonly<Record<SlipKind, number>> = {
  decimal: 0,
  digits: 1,
  fields: 1,
  digit: 3.5,
};
/** Each further line between two swapped ones. */
const UNLIKELY_PER_LINE = 0.7;
/** A consistent label misses the middle of what its rounding allows by about this share of the whole slack. */
const USUAL_MISS = 0.3;
/** Where a remark names the number itself; energy is named by every remark about it, which says nothing. */
const NAMED = 1;
const MOST = 3;
/** So many digits of one number may do before none of them is proposed. */
const MOST_DIGITS = 3;

/**
 * The slips that make a label that cannot be into one that can, the likeliest first, at most three; none for a
 * label about which `checkLabel` has nothing to say, or where no single slip explains all of it. Tried are a
 * decimal point one or two places off, two neighbouring digits swapped, two lines swapped, and one digit wrong.
 * They are ordered by how common the slip is, and by how near the middle of its slack the label then lies: the
 * slack of rounding by 21 CFR 101.9(c) or the EU guidance with the freedom of fibre and polyols, and for values
 * of tables 0.95 (4P + 9F + 4(C − fibre)) − 5 to 1.05 (4P + 9F + 4C) + 5 kcal (derived over SR28).
 * What was kept with a reason is no remark. A proposal, never applied by itself.
 * @param checks further remarks that a slip has to mend, as servings against the pack
 */
export function likelySlips(
  version: FoodVersion,
  checks: (version: FoodVersion) => readonly Problem[] = () => [],
): LikelySlip[] {
  const kept = new Set(version.kept.map(({ code }) => code));
  const problemsOf = (each: FoodVersion) =>
    [...labelProblems(each), ...checks(each)].filter(({ code }) => !kept.has(code));
  const before = problemsOf(version);
  if (before.length === 0) return [];
  const named = new Set(
    before.map(({ path }) => path).filter((path) => !/energyK(?:cal|j)$/.test(path)),
  );
  const touched = mustTouch(before);
  const fitting = slipEdits(version).filter(
    (edit) => touches(edit, touched) && problemsOf(edit.version).length === 0,
  );
  return fitting
    .filter((edit) => !isOneOfMany(edit, fitting))
    .map((edit) => ({ edit, cost: cost(edit, named) }))
    .sort(
      (a, b) =>
        a.cost - b.cost ||
        (a.edit.changes[0]?.path ?? '').localeCompare(b.edit.changes[0]?.path ?? ''),
    )
    .slice(0, MOST)
    .map(({ edit: { kind, changes } }) => ({ kind, changes, message: inWords(kind, changes) }));
}

/** A digit in whose place many others would do as well says nothing. */
function isOneOfMany({ kind, changes }: SlipEdit, fitting: readonly SlipEdit[]): boolean {
  if (kind !== 'digit') return false;
  const alike = fitting.filter(
    (other) => other.kind === 'digit' && other.changes[0]?.path === changes[0]?.path,
  );
  return alike.length > MOST_DIGITS;
}

/** Lines that must change for their remark to go: two columns that disagree, a number that no rule prints. */
function mustTouch(problems: readonly Problem[]): readonly string[] {
  return problems.flatMap(({ code, path }) =>
    code === 'columns-disagree' || code === 'not-by-rule' ? (path.split('.').at(-1) ?? []) : [],
  );
}

function touches({ changes }: SlipEdit, lines: readonly string[]): boolean {
  const all = changes.map(({ nutrient }) => nutrient);
  return all.includes(null) || lines.every((line) => all.some((nutrient) => nutrient === line));
}

function cost({ kind, apart, changes, version }: SlipEdit, named: ReadonlySet<string>): number {
  const far = kind === 'fields' ? (apart - 1) * UNLIKELY_PER_LINE : 0;
  const itself = changes.some(({ path }) => named.has(path)) ? NAMED : 0;
  const misses = energyMisses(version).reduce((sum, miss) => sum + (miss / USUAL_MISS) ** 2, 0);
  const apartness = columnMisses(version).reduce((sum, miss) => sum + (miss / USUAL_MISS) ** 2, 0);
  return UNLIKELY[kind] + far - itself + misses / 2 + apartness / 2;
}

/** How far each stated energy lies from the middle of what the nutrients give, in parts of the whole slack. */
function energyMisses(version: FoodVersion): number[] {
  if (version.rule === 'asPrinted') {
    const check = checkTableEnergy(version);
    return check ? [missOf(check.stated, check, null)] : [];
  }
  return columnsOf(version).flatMap((column) =>
    (['kcal', 'kJ'] as const).flatMap((unit) => {
      const stated = column.interval(unit === 'kcal' ? 'energyKcal' : 'energyKj');
      const given = fromNutrients(column, version, unit);
      if (!stated || !Number.isFinite(given.high)) return [];
      return [missOf((stated.low + stated.high) / 2, given, stated)];
    }),
  );
}

function missOf(
  middle: number,
  given: { readonly low: number; readonly high: number },
  stated: Interval | null,
): number {
  const slack = (given.high - given.low) / 2 + (stated ? (stated.high - stated.low) / 2 : 0);
  return slack > 0 ? Math.abs(middle - (given.low + given.high) / 2) / slack : 0;
}

/** How far apart the two columns are, line by line, in parts of the width of both. */
function columnMisses(version: FoodVersion): number[] {
  if (!version.secondColumn) return [];
  return Object.keys(version.secondColumn.values)
    .filter(isNutrient)
    .flatMap((nutrient) => {
      const first = labelInterval(version.rule, nutrient, cellOf(version.values, nutrient));
      const second = secondColumnInterval(version, nutrient);
      return first && second ? [missOf((first.low + first.high) / 2, second, first)] : [];
    });
}

function inWords(kind: SlipKind, changes: readonly SlipChange[]): string {
  const [one, other] = changes;
  if (!one) throw new Error('A slip changes at least one number');
  const of = ({ nutrient, from, path }: SlipChange) =>
    `${nutrient === null ? 'serving' : NUTRIENTS[nutrient].label} ${from}` +
    (path.startsWith('secondColumn') ? ' in the second column' : '');
  if (kind === 'fields' && other) return `${of(one)} and ${of(other)} look swapped`;
  return `${of(one)} looks like ${one.to}`;
}
