import { parseBindings } from '#lib/episode/binding';
import type { Segment } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import {
  confirmedOnly,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';

/** A stretch of a talking point: words, or a number and what it is of. */
export interface BoundPart {
  readonly text: string;
  /** Null for words, and for a binding that names no number. */
  readonly of: { readonly nutrient: Nutrient; readonly scope: NumberScope } | null;
}

/** A talking point with its numbers filled in. */
export interface BoundText {
  readonly text: string;
  /** The same text in its stretches. */
  readonly parts: readonly BoundPart[];
  /** Bindings that could not be filled, each with the reason in words. */
  readonly gaps: readonly string[];
}

/**
 * Fills a talking point's bound numbers from the published ones: the sentence says what the description says.
 * A number that is open, or a binding that names nothing, stays visible in brackets and is told.
 * @example bindText('[energy, whole] for the tray', segment, figures, numbers).text // '846 kcal for the tray'
 */
export function bindText(
  text: string,
  segment: Segment,
  figures: EpisodeFigures,
  numbers: PublishedNumbers,
): BoundText {
  const gaps: string[] = [];
  const confirmed = confirmedOnly(numbers);
  const words = (stretch: string): BoundPart => ({ text: stretch, of: null });
  const parts = parseBindings(text).map((part): BoundPart => {
    if (part.kind === 'words') return words(part.text);
    if (part.kind === 'unknown') {
      gaps.push(`${part.text} names no number: write for example [protein, whole]`);
      return words(part.text);
    }
    const { nutrient } = part;
    const scope = scopeOf(part.scope, segment);
    if (!scope || !figures.nutrients.includes(nutrient)) {
      gaps.push(`this segment has no ${nutrient} for "${part.scope}"`);
      return words(`[${nutrient}, ${part.scope}]`);
    }
    const number = confirmed(nutrient, scope);
    const of = { nutrient, scope };
    if (number.number === null) {
      gaps.push(`${number.label} is open: ${number.range}`);
      return { text: `[${number.label} is open]`, of };
    }
    return { text: `${number.text} ${number.unit}`, of };
  });
  return { text: parts.map((part) => part.text).join(''), parts, gaps };
}

function scopeOf(scope: 'whole' | 'each' | 'day', segment: Segment): NumberScope | null {
  if (scope === 'day') return { kind: 'day' };
  if (!segment.recipe) return null;
  if (scope === 'whole') return { kind: 'whole', segmentId: segment.id };
  const portion = segment.recipe.portions.find((each) => each.kind === 'count');
  return portion ? { kind: 'portion', portionId: portion.id } : null;
}
