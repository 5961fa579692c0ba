import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { FiguresAt } from '#lib/method/degrees';

/** What figures of temperature are about: a setting, the inside of the food, or neither. */
export type FigureUse = 'setting' | 'inside' | 'none';

const INSIDE =
  /\b(?:inside|internal|internally|core|centre|center|middle|thickest|deepest|probe|thermometer|reads?|reading|registers?|registering|records?)\b/;
/** What is heated as such: a figure it reaches is a setting, also where a thermometer says so. */
const BATH =
  /\b(?:oil|fat|syrup|sugar|caramel|toffee|oven|grill|barbecue|air fryer|fryer|pan|skillet|jam|marmalade|lard|dripping|honeycomb|fudge)\b/;
const NEITHER =
  /\b(?:fridge|refrigerator|freezer|room temperature|room|warm place|lukewarm|blood temperature|tepid|cooled?|cools|cooling|warm water|warm milk|hand-hot|ambient|spot)\b/;

/**
 * What figures are about, by the words around them: up to twelve before and six after, within their clause.
 * `of "until the thickest part reaches 74 °C"` → `'inside'`; of 'warm milk (about 38 °C)' → `'none'`.
 */
export function figureUse(
  tokens: readonly Token[],
  figures: FiguresAt,
  clause: { readonly from: number; readonly next: number; readonly base: string },
): FigureUse {
  const text = (from: number, next: number): string =>
    tokens
      .slice(Math.max(clause.from, from), Math.min(clause.next, next))
      .map(({ folded }) => folded)
      .join(' ');
  const before = text(figures.from - 14, figures.from);
  const near = text(figures.from - 6, figures.from);
  const after = text(figures.next, figures.next + 6);
  const inside =
    INSIDE.test(before) ||
    /^(?:\) )?(?:inside|internal|in the (?:middle|centre|center|core|thickest)|at the (?:core|centre|center|bone)|on (?:a|the) (?:probe|thermometer|meat thermometer|instant-read))\b/.test(
      after,
    );
  const bath = BATH.test(near.replace(/\b(?:in|from|of) the (?:oven|pan)\b/g, ''));
  const high = figures.settings.some(({ unit, value }) =>
    unit === 'C' ? value >= 105 : unit === 'F' && value >= 225,
  );
  if (inside && !(bath && high)) return 'inside';
  const reach = /\b(?:reach(?:es|ed|ing)?|gets? to|hits?|comes? to|is at|has reached)\b/.test(near);
  if (reach && !bath && !high) return 'inside';
  if (/^(?:check|ensure|test|probe|measure)$/.test(clause.base) && !bath) return 'inside';
  if (
    /^(?:cool|chill|rest|stand|thaw|defrost|soak|prove|proof|rise|ferment|leave|dissolve|refrigerate|freeze|sit|store|bloom|set)$/.test(
      clause.base,
    )
  ) {
    return bath && high ? 'setting' : 'none';
  }
  if (NEITHER.test(near) || /^(?:\) )?(?:water|milk|fridge|freezer)\b/.test(after)) return 'none';
  if (
    !high &&
    /\b(?:water|milk|stock|butter|cream|dough|yeast|liquid|wine|buttermilk)\b/.test(near)
  ) {
    return /^(?:heat|warm|bring|scald|cook)$/.test(clause.base) ? 'setting' : 'none';
  }
  if (!high && /\bdown to\b/.test(near)) return 'none';
  return 'setting';
}
