import { amountContext, dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { aboutTolerance } from '#lib/figures/judge-limit';
import type { Nutrient } from '#lib/foods/nutrients';
import { dishSum, type DishSum, type SumInput, type SumScope } from '#lib/swap/dish-sum';
import { slipsOf, type Slip, type SlipKind, type SlipOptions } from '#lib/swap/slips';
import { settled } from '#lib/units/print';

/** A number from a viewer's comment, as it was read. */
export interface ViewerNumber {
  readonly nutrient: Nutrient;
  /** In the nutrient's unit. */
  readonly amount: number;
  /** Digits behind the point, as written. */
  readonly decimals: number;
  /** 'about', 'around', 'like'. */
  readonly about: boolean;
  readonly segmentId: string;
  /** Of what, as far as the comment says; null takes the first equal portion, else the whole dish. */
  readonly scope: SumScope | null;
}

export interface Explained {
  readonly slip: Slip;
  readonly sum: DishSum;
  readonly value: number;
  /** So small a part of the number that other things may come to the same: no cause is told by it alone. */
  readonly slight: boolean;
}

export interface ExplainOptions extends SlipOptions {
  readonly published?: number | null;
}

/** What comes of looking for the step that gives a viewer's number. */
export interface AnotherNumber {
  readonly number: ViewerNumber;
  readonly scope: SumScope;
  /** What the number may stand for, ends included. */
  readonly from: number;
  readonly to: number;
  /** The breakdown's own sum. */
  readonly ours: DishSum;
  /** `same`: it is the breakdown's number; `open`: the breakdown has none itself. */
  readonly standing: 'same' | 'explained' | 'unexplained' | 'open';
  /** Ways that give the number: those that are nobody's slip first, the slight ones last, each the nearest first. */
  readonly explained: readonly Explained[];
}

/**
 * Tries single slips until one gives the number that a viewer gets.
 *
 * Law: each slip that is told gives a number within what the viewer's stands for, and its sum shows how.
 * @param options other readings of labels, which the file does not carry, and the number that was published, which
 *   may be a step off the sum, so that all of them add up
 * @returns null where the dish is gone
 * @example explainNumber(file, { nutrient: 'energyKcal', amount: 512, … })?.explained[0]?.slip.words // 'without the oil'
 */
export function explainNumber(
  file: EpisodeFile,
  number: ViewerNumber,
  options: ExplainOptions = {},
): AnotherNumber | null {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === number.segmentId);
  if (!dish) return null;
  const portion = dish.recipe.portions.find(({ kind }) => kind === 'count');
  const scope: SumScope =
    number.scope ?? (portion ? { kind: 'portion', portionId: portion.id } : { kind: 'whole' });
  const input: SumInput = {
    ...{ file, dish, scope, recipe: dish.recipe, context: amountContext(file) },
    ...{ nutrient: number.nutrient, region: file.episode.region, times: new Map(), again: 1 },
  };
  const half = halfOf(number);
  const [from, to] = [settled(number.amount - half), settled(number.amount + half)];
  const inside = (value: number) => settled(value) >= from && settled(value) <= to;
  const ours = dishSum(input);
  const explained = slipsOf(input, options).flatMap((slip): Explained[] => {
    const sum = dishSum(slip.input);
    const { value } = sum;
    const changes =
      ours.value === null || (value !== null && settled(value) !== settled(ours.value));
    return value !== null && changes && inside(value)
      ? [{ slip, sum, value, slight: isSlight(slip, value, ours.value) }]
      : [];
  });
  const off = ({ value }: Explained) => settled(Math.abs(value - number.amount));
  explained.sort((a, b) => rankOf(a) - rankOf(b) || off(a) - off(b));
  const { published = null } = options;
  const same =
    ours.value !== null && (inside(ours.value) || (published !== null && inside(published)));
  const standing = same
    ? 'same'
    : explained.length > 0
      ? 'explained'
      : ours.value === null
        ? 'open'
        : 'unexplained';
  return { number, scope, from, to, ours, standing, explained: same ? [] : explained };
}

/** What needs no slip comes first: another kitchen has another cheese, and cuts its tray as it likes. */
const NO_SLIP: ReadonlySet<SlipKind> = new Set(['otherVariant', 'otherPortions']);

const rankOf = ({ slip, slight }: Explained) => (NO_SLIP.has(slip.kind) ? 0 : slight ? 2 : 1);

/** An ingredient that changes the number by less than a twentieth (common practice, no source). */
const SLIGHT = 0.05;
const OF_ONE_LINE: ReadonlySet<SlipKind> = new Set(['forgotten', 'doubled']);

function isSlight({ kind }: Slip, value: number, ours: number | null): boolean {
  if (!OF_ONE_LINE.has(kind) || ours === null) return false;
  return Math.abs(value - ours) < SLIGHT * Math.abs(ours);
}

/**
 * How far a written number may be from what it stands for: half of its last digit; a hundred or more that ends in 0 is
 * taken as rounded to ten, as in speech (MODEL D.1); 'about' by its own tolerance.
 */
function halfOf({ nutrient, amount, decimals, about }: ViewerNumber): number {
  const round = decimals === 0 && amount >= 100 && amount % 10 === 0;
  const half = round ? 5 : 0.5 / 10 ** decimals;
  return about ? Math.max(half, aboutTolerance(nutrient, amount)) : half;
}
