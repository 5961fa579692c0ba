import type { Food, YieldObservation } from '#lib/foods/food';
import { statesMatch } from '#lib/episode/eaten-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { yieldFactor, type YieldFactor } from '#lib/episode/yield-choice';
import { printTo } from '#lib/units/print';

/** Who says how much of a raw weight is left when it is cooked. `'your 3 cooks'`, `'USDA SR28, Weight file'`. */
export function yieldSourceWords({ basis, observations }: YieldFactor): string {
  if (basis === 'thisCook') return 'this cook’s own two weights';
  if (basis === 'pastCooks') return `your ${observations.length} cooks`;
  if (basis === 'onePastCook') return 'your last cook';
  return [...new Set(observations.map(({ source }) => source))].join('; ');
}

/** One observation in percent. `yieldPercent({ rawMg: 113_400, cookedMg: 82_000 })` → `'72 %'`. */
export function yieldPercent({
  rawMg,
  cookedMg,
}: Pick<YieldObservation, 'rawMg' | 'cookedMg'>): string {
  return percentText(cookedMg / rawMg);
}

/**
 * The yield that an ingredient is turned from one state into the other by, with its range and who says so; null
 * where none is needed. Without one it says so.
 * @example 'raw to cooked by 72 % (67–77 %): patty, USDA SR28, Weight file'
 */
export function yieldWords(
  food: Food,
  line: Pick<RecipeLine, 'id' | 'state' | 'cookMethod'>,
): string | null {
  if (statesMatch(line.state, food.version.state)) return null;
  const factor = yieldFactor(food, line);
  if (!factor) return NONE;
  const toCooked = line.state === 'raw' || line.state === 'dry';
  return `${toCooked ? 'raw to cooked' : 'cooked to raw'} by ${usedWords(factor)}`;
}

const NONE = 'raw to cooked or back it cannot be: no cooked weight is known of this food';

/**
 * The yield that a food is turned by where its ingredient names no way of cooking; null where none is known.
 * @example '72 % (67–77 %): patty, USDA SR28, Weight file'
 */
export function yieldUsedWords(food: Food): string | null {
  const factor = yieldFactor(food, { id: '', cookMethod: null });
  return factor && usedWords(factor);
}

function usedWords(factor: YieldFactor): string {
  const { low, high } = percentRange(factor);
  const method = factor.observations[0]?.method ?? '';
  const source = [method, yieldSourceWords(factor)].filter((word) => word !== '').join(', ');
  return `${percentText(factor.value)} (${low}–${high} %): ${source}`;
}

function percentRange({ up, down, sources }: YieldFactor) {
  const over = sources.get(up);
  const under = down === null ? null : sources.get(down);
  const of = (share: number) => printTo(share * 100, 1);
  return {
    low: of((over?.low ?? 0) / (under?.high ?? 1)),
    high: of((over?.high ?? 0) / (under?.low ?? 1)),
  };
}

const percentText = (share: number) => `${printTo(share * 100, 1)} %`;

/** The ways a food is cooked that a yield is known of, each once, own ones first. */
export function cookMethods(food: Pick<Food, 'yields'>): readonly string[] {
  const ordered = [...food.yields].sort((a, b) => Number(a.own === null) - Number(b.own === null));
  return [...new Set(ordered.map(({ method }) => method))];
}
