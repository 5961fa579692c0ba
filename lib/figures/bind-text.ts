import { parseBindings } from '#lib/episode/binding';
import type { Segment } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import {
  confirmedOnly,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';

/** A talking point with its numbers filled in. */
export interface BoundText {
  readonly text: string;
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
  const filled = parseBindings(text).map((part) => {
    if (part.kind === 'words') return part.text;
    if (part.kind === 'unknown') {
      gaps.push(`${part.text} names no number: write for example [protein, whole]`);
      return part.text;
    }
    const scope = scopeOf(part.scope, segment);
    if (!scope || !figures.nutrients.includes(part.nutrient)) {
      gaps.push(`this segment has no ${part.nutrient} for "${part.scope}"`);
      return `[${part.nutrient}, ${part.scope}]`;
    }
    const number = confirmed(part.nutrient, scope);
    if (number.number === null) {
      gaps.push(`${number.label} is open: ${number.range}`);
      return `[${number.label} is open]`;
    }
    return `${number.text} ${number.unit}`;
  });
  return { text: filled.join(''), gaps };
}

function scopeOf(scope: 'whole' | 'each' | 'day', segment: Segment): NumberScope | null {
  if (scope === 'day') return { kind: 'day' };
  if (!segment.recipe) return null;
  if (scope === 'whole') return { kind: 'whole', segmentId: segment.id };
  const portion = segment.recipe.portions.find((each) => each.kind === 'count');
  return portion ? { kind: 'portion', portionId: portion.id } : null;
}
