import type { ClaimRow, Verdict } from '#lib/claims/judged';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { judgeLimit } from '#lib/figures/judge-limit';
import { missingText } from '#lib/figures/print-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printGrams, printTo, roundTo, settled } from '#lib/units/print';
import type { ClaimFacts } from './claim-facts';
import type { ClaimRelation, Condition } from './claim-rule';

/** One number of a rule, held against the dish. */
export interface ConditionJudged extends ClaimRow {
  /** "at most 3 g of fat in 140 g". */
  readonly asks: string;
  /** "0.4 g more than it allows"; null where it is not off. */
  readonly difference: string | null;
  /** Off, and still within the hard bounds. */
  readonly possible: boolean;
  /** Rests on a food that nobody has confirmed. */
  readonly provisional: boolean;
}

/** Reference amounts up to this are small: nutrients count in 50 g too (21 CFR 101.60(b)(2)(i)(B) and alike). */
const SMALL_MG = 30_000;
const SMALL_JUDGED_MG = 50_000;

/** What weighs so much more or less than water, of drinks and soups (common practice, no source). */
const DENSITY = { low: 0.95, high: 1.1 } as const;

/**
 * Holds a figure against a limit by `judgeLimit`; `under` leaves the limit itself out.
 * @example judgeThreshold(sugars, 'under', 0.5) // 'agrees' where the likely range ends below 0.5
 */
export function judgeThreshold(figure: Figure, relation: ClaimRelation, limit: number): Verdict {
  const told = judgeLimit(figure, relation === 'atLeast' ? 'atLeast' : 'atMost', limit);
  const verdict = (
    { met: 'agrees', cannotTell: 'edge', missed: 'off', unknown: 'unknown' } as const
  )[told];
  if (relation !== 'under') return verdict;
  const end = settled(limit);
  const low = figure.likelyLow === null ? -Infinity : settled(figure.likelyLow);
  const high = figure.likelyHigh === null ? Infinity : settled(figure.likelyHigh);
  if (low >= end && settled(figure.value) >= end) return 'off';
  return verdict === 'agrees' && high >= end ? 'edge' : verdict;
}

/** Whether any amount that the sources' digits allow would do. */
function isPossible({ low, high }: Figure, relation: ClaimRelation, limit: number): boolean {
  if (relation === 'atLeast') return high === null || settled(high) >= settled(limit);
  const least = low === null ? -Infinity : settled(low);
  return relation === 'under' ? least < settled(limit) : least <= settled(limit);
}

/**
 * Holds a dish against one number of a rule: one row for each amount that it counts in.
 * @param raccMg the reference amount; null where nobody said
 * @param drink judged by what holds for drinks, per 100 ml
 */
export function judgeCondition(
  condition: Condition,
  facts: ClaimFacts,
  raccMg: number | null,
  drink: boolean,
): readonly ConditionJudged[] {
  const { measure, relation } = condition;
  const names = measure.nutrients.map((each) => NUTRIENTS[each].label).join(' and ');
  if (measure.kind === 'energyShare') {
    const figure = facts.perEnergy(measure.nutrients, measure.kcalPerG * 100);
    const what = { words: `of its energy from ${names}`, of: `from ${names}`, per: 'its energy' };
    return [judged(figure, relation, condition.limit, '%', what)];
  }
  const unit = unitOf(measure.nutrients);
  // Calories are their own unit.
  const of = measure.nutrients[0] === 'energyKcal' ? '' : `of ${names}`;
  const inside = (per: string): Counted => ({ words: `${of} in ${per}`.trimStart(), of, per });
  if (measure.kind === 'per100kcal') {
    const figure = facts.perEnergy(measure.nutrients, 100);
    return [judged(figure, relation, condition.limit, unit, inside('100 kcal of it'))];
  }
  if (measure.per === 'serving') {
    return facts.servings.map((name, at) => {
      const figure = facts.ofServing(measure.nutrients, at);
      return judged(figure, relation, condition.limit, unit, inside(name));
    });
  }
  const limit = drink ? (condition.liquidLimit ?? condition.limit) : condition.limit;
  const masses =
    measure.per === '100g'
      ? [100_000]
      : raccMg === null
        ? []
        : measure.small && raccMg <= SMALL_MG
          ? [raccMg, SMALL_JUDGED_MG]
          : [raccMg];
  return masses.map((massMg) => {
    const amount = drink && measure.per === '100g' ? '100 ml' : `${printGrams(massMg)} g`;
    const what = inside(amount);
    const found = facts.ofMass(measure.nutrients, massMg);
    if (!found) return withoutWeight(relation, limit, unit, what);
    const figure = drink && measure.per === '100g' ? inVolume(found) : found;
    const counted = measure.corrected ? corrected(figure, facts) : figure;
    const row = judged(counted ?? figure, relation, limit, unit, what);
    return measure.corrected ? proteinRow(row, counted !== null) : row;
  });
}

const unitOf = (nutrients: readonly Nutrient[]) => NUTRIENTS[nutrients[0] ?? 'energyKcal'].unit;

/** So many milligrams as millilitres of something near to water. */
function inVolume(figure: Figure): Figure {
  const down = (value: number | null) => (value === null ? null : value * DENSITY.low);
  const up = (value: number | null) => (value === null ? null : value * DENSITY.high);
  return {
    ...figure,
    low: down(figure.low),
    likelyLow: down(figure.likelyLow),
    high: up(figure.high),
    likelyHigh: up(figure.likelyHigh),
  };
}

/** Protein that counts by PDCAAS; null until the person has said which share does. */
function corrected(figure: Figure, { claims }: ClaimFacts): Figure | null {
  const permille = claims?.proteinPermille ?? null;
  if (permille === null) return null;
  const share = (value: number | null) => (value === null ? null : (value * permille) / 1000);
  return {
    ...figure,
    value: (figure.value * permille) / 1000,
    low: share(figure.low),
    high: share(figure.high),
    likelyLow: share(figure.likelyLow),
    likelyHigh: share(figure.likelyHigh),
  };
}

/** Below the threshold before any correction it is off; else it takes the share that counts (MODEL D.3). */
function proteinRow(row: ConditionJudged, isCorrected: boolean): ConditionJudged {
  const told = {
    asks: `${row.asks}, corrected by PDCAAS (21 CFR 101.9(c)(7))`,
    threshold: `${row.threshold}, corrected by PDCAAS`,
  };
  if (isCorrected) return { ...row, ...told };
  if (row.verdict === 'off') return { ...row, ...told, has: `${row.has} before any correction` };
  const has = `${row.has}, and nobody has said which share of it counts by PDCAAS`;
  return { ...row, ...told, has, verdict: 'unknown', difference: null, possible: false };
}

const RELATIONS: Readonly<Record<ClaimRelation, string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  under: 'less than',
};

/** What a limit counts: its own words, and the two parts of them that a table has apart. */
interface Counted {
  /** "of fat in 140 g". */
  readonly words: string;
  /** "of fat"; empty where the unit says it. */
  readonly of: string;
  readonly per: string;
}

function asked(relation: ClaimRelation, limit: number, unit: string, { words, of, per }: Counted) {
  const least = `${RELATIONS[relation]} ${printLimit(limit)} ${unit}`;
  return { asks: `${least} ${words}`, threshold: `${least} ${of}`.trimEnd(), per };
}

function withoutWeight(
  relation: ClaimRelation,
  limit: number,
  unit: string,
  what: Counted,
): ConditionJudged {
  return {
    ...asked(relation, limit, unit, what),
    has: 'no finished weight: weigh the finished dish, or give a yield that is published for it',
    verdict: 'unknown',
    difference: null,
    possible: false,
    provisional: false,
  };
}

function judged(
  figure: Figure,
  relation: ClaimRelation,
  limit: number,
  unit: string,
  what: Counted,
): ConditionJudged {
  const verdict = judgeThreshold(figure, relation, limit);
  const off = figure.value - limit;
  const step = telling(figure, limit);
  const far = `${printTo(Math.abs(off), step)} ${unit}`;
  const side = relation === 'atLeast' ? 'less than it asks for' : 'more than it allows';
  return {
    ...asked(relation, limit, unit, what),
    has: amountWords(figure, step, unit),
    verdict,
    difference: verdict === 'off' && figureStatus(figure) === 'known' ? `${far} ${side}` : null,
    possible: verdict === 'off' && isPossible(figure, relation, limit),
    provisional: figure.provisional.length > 0,
  };
}

/** "2.1 g, likely 1.9–2.3". */
function amountWords(figure: Figure, step: number, unit: string): string {
  const print = (value: number) => printTo(value, step);
  const why = missingText(figure.missing);
  const steps = (round: (value: number) => number, end: number) =>
    round(settled(end / step)) * step;
  switch (figureStatus(figure)) {
    case 'open':
      return why === '' ? 'open: nothing is known of its energy' : `open: ${why}`;
    case 'atLeast':
      return `at least ${print(steps(Math.floor, figure.likelyLow ?? 0))} ${unit} (${why})`;
    case 'atMost':
      return `at most ${print(steps(Math.ceil, figure.likelyHigh ?? 0))} ${unit} (${why})`;
    case 'known': {
      const [low, high] = [print(figure.likelyLow ?? 0), print(figure.likelyHigh ?? 0)];
      const range = low === high ? '' : `, likely ${low}–${high}`;
      return `${print(figure.value)} ${unit}${range}`;
    }
  }
}

/** Digits of a limit as the rule writes it. */
const printLimit = (limit: number) => String(settled(limit));

/** A step by which value, ends and limit can be told apart, no finer than thousandths. */
function telling({ value, likelyLow, likelyHigh }: Figure, limit: number): number {
  const steps = limit >= 20 ? [1, 0.1, 0.01] : limit >= 1 ? [0.1, 0.01] : [0.01];
  const ends = [value, likelyLow, likelyHigh].filter((each) => each !== null);
  const told = (step: number) =>
    ends.every((end) => settled(end) === settled(limit) || roundTo(end, step) !== settled(limit));
  return steps.find(told) ?? 0.001;
}
