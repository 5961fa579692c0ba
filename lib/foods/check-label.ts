import { energyProblems } from '#lib/foods/check-label-energy';
import { checkTableEnergy } from '#lib/foods/energy-check';
import {
  amount,
  amountRange,
  BASIS_WORDS,
  columnsOf,
  lowSum,
  type LabelColumn,
} from '#lib/foods/label-column';
import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion, Values } from '#lib/foods/food';
import { canBePrinted, labelInterval, secondColumnInterval } from '#lib/foods/label-rounding';
import { isNutrient, NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Problem } from '#lib/result';
import { printedText } from '#lib/units/printed';

/** Pairs of which the first is a part of the second. */
const PARTS: readonly (readonly [part: Nutrient, whole: Nutrient, code: string])[] = [
  ['sugars', 'carbohydrate', 'sugars-above-carbohydrate'],
  ['addedSugars', 'sugars', 'added-sugars-above-sugars'],
  ['polyols', 'carbohydrate', 'polyols-above-carbohydrate'],
  ['saturated', 'fat', 'saturated-above-fat'],
  ['transFat', 'fat', 'trans-above-fat'],
];

/** Grams of sodium in 100 g of pure salt: 22.99 / 58.44 of it. */
const MOST_SODIUM_SHARE = 0.3934;
/** No food weighs more per millilitre than honey by far: 1.6 g (common practice, no source). */
const HEAVIEST_G_PER_ML = 1.6;
/** A table's values are analysed one by one: in 95 % of SR28 they sum to at most 101.3 g per 100 g. */
const TABLE_SUM = 1.02;
/** EU salt is sodium times 2.5 (Regulation 1169/2011 Annex I). */
const SALT_PER_SODIUM = 2.5;

/**
 * What on a label cannot be, told at once: a part above its whole, more nutrients than the serving weighs,
 * energy that the nutrients cannot give (see `energyProblems`), two columns that share no amount, salt that is
 * not 2.5 times sodium, a number that the label's rounding rule cannot print.
 * Everything is compared as intervals, so rounding alone raises nothing; values that follow no label rule
 * (`asPrinted`) get the tolerances of a table for energy and for the sum. Remarks whose code the person kept
 * with a reason (`version.kept`) are left out; `labelProblems` has them all.
 */
export function checkLabel(version: FoodVersion): Problem[] {
  const kept = new Set(version.kept.map(({ code }) => code));
  return labelProblems(version).filter(({ code }) => !kept.has(code));
}

/** All remarks of `checkLabel`, also those that were kept. */
export function labelProblems(version: FoodVersion): Problem[] {
  return [
    ...columnsOf(version).flatMap((column) => [
      ...partProblems(column, version),
      ...massProblems(column, version),
      ...saltProblems(column),
      ...(version.rule === 'asPrinted' ? [] : energyProblems(column, version)),
      ...printProblems(column, version),
    ]),
    ...columnProblems(version),
    ...(version.rule === 'asPrinted' ? tableEnergyProblems(version) : []),
  ];
}

function partProblems(column: LabelColumn, version: FoodVersion): Problem[] {
  const pairs =
    version.carbBasis === 'total'
      ? [...PARTS, ['fibre', 'carbohydrate', 'fibre-above-carbohydrate'] as const]
      : PARTS;
  return pairs.flatMap(([part, whole, code]) => {
    const inner = column.interval(part);
    const outer = column.interval(whole);
    if (!inner || !outer || inner.low <= outer.high) return [];
    const { label, unit } = NUTRIENTS[part];
    const by = inner.low - outer.high;
    return [
      {
        path: `${column.path}.${part}`,
        code,
        message: `${capital(label)} is part of ${NUTRIENTS[whole].label}, but even rounded it is at least ${amount(by, unit)} above it.`,
        facts: { part: inner.value, whole: outer.value, by },
      },
    ];
  });
}

/** Nutrients in grams that do not overlap cannot weigh more than what holds them. */
function massProblems(column: LabelColumn, version: FoodVersion): Problem[] {
  const weighs =
    column.massG?.high ?? (column.volumeMl === null ? null : column.volumeMl * HEAVIEST_G_PER_ML);
  if (weighs === null) return [];
  const most = version.rule === 'asPrinted' ? weighs * TABLE_SUM : weighs;
  const names: Nutrient[] = ['water', 'protein', 'fat', 'carbohydrate', 'ash', 'alcohol'];
  if (version.carbBasis === 'available') names.push('fibre');
  const sum = lowSum(column, names);
  const found: Problem[] = [];
  if (sum > most) {
    found.push({
      path: column.path,
      code: 'nutrients-above-mass',
      message: `The nutrients weigh at least ${amount(sum, 'g')} together, but ${column.words} weighs at most ${amount(most, 'g')}: ${amount(sum - most, 'g')} too much.`,
      facts: { sum, most, by: sum - most },
    });
  }
  const sodium = column.interval('sodium');
  const mostSodium = most * MOST_SODIUM_SHARE * 1000;
  if (sodium && sodium.low > mostSodium) {
    found.push({
      path: `${column.path}.sodium`,
      code: 'sodium-above-salt',
      message: `Even pure salt has at most ${amount(mostSodium, 'mg')} of sodium in ${column.words}; this says ${amount(sodium.value, 'mg')}.`,
      facts: { stated: sodium.value, most: mostSodium, by: sodium.low - mostSodium },
    });
  }
  return found;
}

function saltProblems(column: LabelColumn): Problem[] {
  const salt = column.interval('salt');
  const sodium = column.interval('sodium');
  if (!salt || !sodium) return [];
  const low = (sodium.low / 1000) * SALT_PER_SODIUM;
  const high = (sodium.high / 1000) * SALT_PER_SODIUM;
  if (salt.low <= high && salt.high >= low) return [];
  const by = salt.low > high ? salt.low - high : low - salt.high;
  return [
    {
      path: `${column.path}.salt`,
      code: 'salt-not-sodium',
      message: `Salt is sodium times 2.5: ${amount(low, 'g')} to ${amount(high, 'g')} here, not ${amount(salt.value, 'g')}.`,
      facts: { stated: salt.value, low, high, by },
    },
  ];
}

function printProblems(column: LabelColumn, version: FoodVersion): Problem[] {
  return namesIn(column.values).flatMap((nutrient) => {
    const cell = cellOf(column.values, nutrient);
    if (cell.kind !== 'eq' || canBePrinted(version.rule, nutrient, cell)) return [];
    const { label, unit } = NUTRIENTS[nutrient];
    const rule = version.rule === 'us' ? 'the US rounding rules' : 'the EU rounding guidance';
    return [
      {
        path: `${column.path}.${nutrient}`,
        code: 'not-by-rule',
        message: `By ${rule} no label prints ${printedText(cell)} ${unit} of ${label}: read it again, or set how this label rounds.`,
        facts: { nutrient, stated: printedText(cell), rule: version.rule },
      },
    ];
  });
}

/** Values as a table prints them follow no label rule: their energy is held against the table's tolerances. */
function tableEnergyProblems(version: FoodVersion): Problem[] {
  const check = checkTableEnergy(version);
  if (!check || check.fits) return [];
  const by = check.stated < check.low ? check.low - check.stated : check.stated - check.high;
  return [
    {
      path: 'values.energyKcal',
      code: 'energy-off-nutrients',
      message: `The nutrients give ${amount(check.low, 'kcal')} to ${amount(check.high, 'kcal')}; ${amount(check.stated, 'kcal')} is ${amount(by, 'kcal')} outside. Alcohol, acids and sweeteners would explain it.`,
      facts: { stated: check.stated, low: check.low, high: check.high, by },
    },
  ];
}

/** Serving and 100 g of one label must allow at least one true amount in common. */
function columnProblems(version: FoodVersion): Problem[] {
  const { secondColumn, basis, rule, values } = version;
  if (!secondColumn) return [];
  const columns = `${capital(BASIS_WORDS[basis])} and ${BASIS_WORDS[secondColumn.basis]}`;
  return namesIn(secondColumn.values).flatMap((nutrient) => {
    const first = labelInterval(rule, nutrient, cellOf(values, nutrient));
    const second = secondColumnInterval(version, nutrient);
    if (!first || !second || (first.low <= second.high && second.low <= first.high)) return [];
    const { label, unit } = NUTRIENTS[nutrient];
    const by = first.low > second.high ? first.low - second.high : second.low - first.high;
    return [
      {
        path: `secondColumn.values.${nutrient}`,
        code: 'columns-disagree',
        message: `${columns} disagree: for ${label} the first stands for ${amountRange(first, unit)}, the second makes it ${amountRange(second, unit)}. One of them was misread.`,
        facts: { nutrient, first: first.value, second: second.value, by },
      },
    ];
  });
}

function namesIn(values: Values): Nutrient[] {
  return Object.keys(values).filter(isNutrient);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
