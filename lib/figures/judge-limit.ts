import type { Target } from '#lib/episode/schema';
import { figureStatus, type Figure } from '#lib/figures/figure';
import { shownStep } from '#lib/figures/print-figure';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printTo, roundTo, settled } from '#lib/units/print';

export type LimitVerdict = 'met' | 'cannotTell' | 'missed' | 'unknown';
export type LimitRelation = Target['relation'];

/** The least that "about" may be off, by unit; 5 kcal are 20.9 kJ (common practice, no source). */
const LEAST_ABOUT: Partial<Readonly<Record<string, number>>> = { kcal: 5, kJ: 20.92, g: 1 };
const ABOUT_SHARE = 0.05;

/**
 * How far from a number "about" it may be: 5 % of it, and at least 5 kcal or 1 g; in milligrams and smaller
 * units 5 % alone (common practice, no source).
 * @example aboutTolerance('energyKcal', 640) // 32
 */
export function aboutTolerance(nutrient: Nutrient, amount: number): number {
  return Math.max(LEAST_ABOUT[NUTRIENTS[nutrient].unit] ?? 0, amount * ABOUT_SHARE);
}

/** The amounts that satisfy a limit, ends included. */
function satisfying(
  nutrient: Nutrient,
  relation: LimitRelation,
  amount: number,
): { readonly from: number; readonly to: number } {
  if (relation === 'atLeast') return { from: amount, to: Infinity };
  if (relation === 'atMost') return { from: -Infinity, to: amount };
  const tolerance = aboutTolerance(nutrient, amount);
  return { from: amount - tolerance, to: amount + tolerance };
}

/**
 * Holds a figure against a limit: targets, claim words and one-sided statements share this.
 * Met if the whole likely range satisfies it; missed if the value fails and the likely range lies wholly
 * outside; otherwise it cannot tell. A one-sided figure decides only where its known side does.
 * @param amount the limit in the figure's unit
 * @example judgeLimit(protein, 'atLeast', 70) // 'met' where the likely range starts at 70 or above
 * @example judgeLimit(energy, 'about', 640) // 'met' where the likely range lies within 608 to 672
 */
export function judgeLimit(figure: Figure, relation: LimitRelation, amount: number): LimitVerdict {
  const limits = satisfying(figure.nutrient, relation, amount);
  const [from, to] = [settled(limits.from), settled(limits.to)];
  const status = figureStatus(figure);
  const [low, high] = [figure.likelyLow, figure.likelyHigh].map((end) =>
    end === null ? null : settled(end),
  );
  if (status === 'open') return 'unknown';
  if (status === 'atLeast') {
    if (low == null) return 'unknown';
    if (low > to) return 'missed';
    return to === Infinity && low >= from ? 'met' : 'unknown';
  }
  if (status === 'atMost') {
    if (high == null) return 'unknown';
    if (high < from) return 'missed';
    return from === -Infinity && high <= to ? 'met' : 'unknown';
  }
  if (low == null || high == null) return 'unknown';
  if (low >= from && high <= to) return 'met';
  const value = settled(figure.value);
  const fails = value < from || value > to;
  return fails && (high < from || low > to) ? 'missed' : 'cannotTell';
}

/** What a distance above a limit and one below it are called. */
const SIDES: Readonly<Record<LimitRelation, readonly [above: string, below: string]>> = {
  atLeast: ['above', 'short'],
  atMost: ['over', 'below'],
  about: ['above', 'below'],
};

/**
 * How far a figure is from a limit, in words; null where nothing is known of it. A figure that is only
 * 'at least' or 'at most' gives the distance of its known side.
 * @example howFar(protein, 'atLeast', 70) // '12 g short, 9 to 15 likely'
 * @example howFar(protein, 'atLeast', 58) // '0.4 g short, likely from 2.1 g short to 1.3 g above'
 */
export function howFar(figure: Figure, relation: LimitRelation, amount: number): string | null {
  const [above, below] = SIDES[relation];
  const side = (from: number) => (from < 0 ? below : above);
  const { unit } = NUTRIENTS[figure.nutrient];
  const off = (value: number | null) => (value ?? 0) - amount;
  const status = figureStatus(figure);
  const low = off(figure.likelyLow);
  const high = off(figure.likelyHigh);
  const step = shownStep(figure.nutrient, Math.abs(off(figure.value)));
  const print = (value: number) => printTo(Math.abs(value), step);
  switch (status) {
    case 'open':
      return null;
    case 'atLeast':
      return low < 0
        ? `at most ${print(low)} ${unit} ${below}`
        : `at least ${print(low)} ${unit} ${above}`;
    case 'atMost':
      return high > 0
        ? `at most ${print(high)} ${unit} ${above}`
        : `at least ${print(high)} ${unit} ${below}`;
    case 'known': {
      const told = `${print(off(figure.value))} ${unit} ${side(off(figure.value))}`;
      const ends = [low, high].map((each) => ({ each, rounded: roundTo(each, step) }));
      const [first, last] = ends;
      if (!first || !last || first.rounded === last.rounded) return told;
      if (first.rounded < 0 && last.rounded > 0) {
        const end = ({ each }: { each: number }) => `${print(each)} ${unit} ${side(each)}`;
        return `${told}, likely from ${end(first)} to ${end(last)}`;
      }
      const [near, far] = [first, last].map(({ each }) => print(each)).sort((a, b) => +a - +b);
      return `${told}, ${near} to ${far} likely`;
    }
  }
}
