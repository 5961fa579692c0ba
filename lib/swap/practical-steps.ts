import { amountContext, dishesOf } from '#lib/episode/context';
import { findMeasure } from '#lib/episode/line-amount';
import type { EpisodeFile } from '#lib/episode/schema';
import { gramsOf, oneOfIt } from '#lib/swap/counted-amount';

/** How an ingredient's amount may be changed; `fixed` not at all. */
export type FitRule =
  | { readonly lineId: string; readonly kind: 'fixed'; readonly why: string }
  | {
      readonly lineId: string;
      readonly kind: 'free';
      readonly lowMg: number;
      readonly highMg: number;
      readonly stepMg: number | null;
      /** What a step is: 'slice', 'half a pack', '5 g'. */
      readonly stepWords: string;
    };

/** From half of it to twice of it, where nobody said (common practice, no source). */
const LEAST = 0.5;
const MOST = 2;

/** What of a spoon or cup can be measured. */
const PARTS_OF: Partial<
  Readonly<Record<string, { readonly share: number; readonly words: string }>>
> = {
  tsp: { share: 0.5, words: 'half a teaspoon' },
  tbsp: { share: 0.5, words: 'half a tablespoon' },
  cup: { share: 0.25, words: 'a quarter of a cup' },
  serving: { share: 0.5, words: 'half a serving' },
};

/**
 * Practical steps of a dish's ingredients, to be changed by the person: whole pieces, half packs and spoons, quarters of a cup, else 5 g, and 1 g below
 * 25 g (common practice, no source). What has no grams, and what is made from another dish, stays as it is.
 */
export function practicalRules(file: EpisodeFile, segmentId: string): readonly FitRule[] {
  const context = amountContext(file);
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  return (dish?.recipe.lines ?? []).map((line): FitRule => {
    const { id: lineId } = line;
    const grams = dish ? gramsOf(line, dish.recipe, context) : null;
    if (!grams || grams.valueMg === 0)
      return { lineId, kind: 'fixed', why: 'its grams are not known' };
    if (line.madeFrom) return { lineId, kind: 'fixed', why: 'it is another dish' };
    const { valueMg } = grams;
    const food = context.foods.get(line.foodId ?? '');
    const piece =
      food && line.unit === 'piece' ? findMeasure('piece', line.measureName, food) : null;
    const netMg =
      line.unit === 'pack' ? (context.packs.get(food?.id ?? '')?.[0]?.netMg ?? null) : null;
    const range = { lowMg: Math.floor(valueMg * LEAST), highMg: Math.ceil(valueMg * MOST) };
    const free = { lineId, kind: 'free' as const, ...range };
    if (piece) {
      const { massMg, qtyNum, qtyDen, name } = piece.measure;
      const stepMg = Math.round((massMg * qtyDen) / qtyNum);
      return { ...free, stepMg, highMg: Math.max(range.highMg, valueMg + stepMg), stepWords: name };
    }
    const one = dish ? oneOfIt(line, dish.recipe, context) : null;
    const part = PARTS_OF[line.unit ?? ''];
    if (one !== null && part) {
      return { ...free, stepMg: one * part.share, stepWords: part.words };
    }
    if (netMg !== null && netMg > 1)
      return { ...free, stepMg: netMg / 2, stepWords: 'half a pack' };
    const stepMg = valueMg < 25_000 ? 1_000 : 5_000;
    return { ...free, stepMg, stepWords: `${stepMg / 1000} g` };
  });
}

/** A step that an ingredient's amount may go in. */
export interface StepChoice {
  readonly stepMg: number | null;
  readonly words: string;
}

/** Steps that are usual for an ingredient, beside the one that is proposed; any amount last (common practice, no source). */
export function stepChoices(rule: Extract<FitRule, { kind: 'free' }>): readonly StepChoice[] {
  const { stepMg, stepWords } = rule;
  const counted = stepMg !== null && !/^\d+ g$|^(?:half|a quarter)/.test(stepWords);
  const own = stepMg === null ? [] : [{ stepMg, words: counted ? `1 ${stepWords}` : stepWords }];
  const half = counted ? [{ stepMg: stepMg / 2, words: `half a ${stepWords}` }] : [];
  const grams = [1_000, 5_000, 10_000, 25_000, 50_000]
    .filter((each) => each !== stepMg)
    .map((each) => ({ stepMg: each, words: `${each / 1_000} g` }));
  return [...own, ...half, ...grams, { stepMg: null, words: 'any amount' }];
}
