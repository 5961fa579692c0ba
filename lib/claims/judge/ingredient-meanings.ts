import { matchingLines } from '#lib/claims/judge-beyond/matching-lines';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Figures, LineFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import type { Nutrient } from '#lib/foods/nutrients';
import type { JudgeContext, JudgedDish } from './judge-context';
import { aMeaning, ofMakings, whole, type About, type Meaning } from './meaning';

/**
 * The ingredient’s own line, or a share of it; where all of it is counted, one of them as well; where several have the
 * name, all of them together and each alone.
 * @param share an exact share of it
 */
export function ingredientMeanings(
  food: string,
  dishes: About['dishes'],
  { amounts, figures }: JudgeContext,
  share = 1,
): readonly Meaning[] | string {
  const found = dishes.flatMap((of): Meaning[] => {
    const lines = matchingLines(food, of.dish, amounts).flatMap((own) => {
      const line = of.figures.lines.find(({ lineId }) => lineId === own.id);
      return line ? [{ own, line }] : [];
    });
    const each = lines.flatMap(({ own, line }) => lineMeanings(own, line, of.dish, share));
    if (lines.length < 2) return each;
    const all = lines.map(({ line }) => line);
    const text = all.map((line) => line.text).join('” and “');
    const [first] = all;
    const sum = sumOf(all, figures.nutrients);
    const together = first && { ...first, text, figures: sum };
    return together ? [...partsOf(together, of.dish, share), ...each] : each;
  });
  return found.length > 0 ? found : `no ingredient is called ${food}`;
}

/** One of an ingredient that is counted, as one of ten tortillas. */
export function oneOfIngredient(
  food: string,
  dishes: About['dishes'],
  { amounts }: JudgeContext,
): readonly Meaning[] | string {
  const lines = dishes.flatMap((of) =>
    matchingLines(food, of.dish, amounts).map((own) => ({ of, own })),
  );
  if (lines.length === 0) return `no ingredient is called ${food}`;
  const found = lines.map(({ of, own }) => {
    const line = of.figures.lines.find(({ lineId }) => lineId === own.id);
    const count = piecesOf(own);
    const called = count === 1 ? '' : 'one of ';
    return line && count ? lineMeaning(line, of.dish, 1 / count, called) : null;
  });
  const known = found.filter((meaning) => meaning !== null);
  return known.length === found.length ? known : `how many of ${food} are there?`;
}

/** How many pieces an ingredient is; null where it is not counted. */
function piecesOf({ quantity, unit }: RecipeLine): number | null {
  const { low, high } = quantity ?? { low: null, high: null };
  const pieces = unit === 'piece' || unit === 'serving';
  const one = pieces && low && high && low.num * high.den === high.num * low.den && low.num > 0;
  return one ? low.num / low.den : null;
}

function lineMeanings(
  own: RecipeLine,
  line: LineFigures,
  dish: JudgedDish['dish'],
  share: number,
): Meaning[] {
  const count = piecesOf(own) ?? 1;
  const counted = share === 1 && count > 1;
  const all = partsOf(line, dish, share);
  return counted ? [...all, lineMeaning(line, dish, 1 / count, 'one of ')] : all;
}

function partsOf(line: LineFigures, dish: JudgedDish['dish'], share: number): Meaning[] {
  const part = share === 1 ? '' : share === 1 / 2 ? 'half of ' : `1/${Math.round(1 / share)} of `;
  return ofMakings(lineMeaning(line, dish, share, part), dish);
}

/** @param part what of it, in words that end before its name: 'half of ' */
function lineMeaning(
  line: LineFigures,
  { id: segmentId, title }: JudgedDish['dish'],
  share: number,
  part: string,
): Meaning {
  const called = `${part}“${line.text}” in ${title}`;
  return aMeaning(called, line.figures, whole(segmentId), {
    share,
    published: null,
    against: () => ({ kind: 'line', segmentId, lineId: line.lineId }),
  });
}

/** Ingredients together: their ends are added, so that the likely range is rather too wide than too narrow. */
function sumOf(lines: readonly LineFigures[], nutrients: readonly Nutrient[]): Figures {
  return Object.fromEntries(
    nutrients.flatMap((nutrient) => {
      const all = lines.flatMap(({ figures }) => figures[nutrient] ?? []);
      return all.length === lines.length ? [[nutrient, added(nutrient, all)]] : [];
    }),
  );
}

function added(nutrient: Nutrient, all: readonly Figure[]): Figure {
  const ends = (of: (figure: Figure) => number | null) =>
    all.reduce<number | null>((sum, figure) => {
      const end = of(figure);
      return sum === null || end === null ? null : sum + end;
    }, 0);
  return {
    nutrient,
    value: all.reduce((sum, { value }) => sum + value, 0),
    low: ends(({ low }) => low),
    high: ends(({ high }) => high),
    likelyLow: ends(({ likelyLow }) => likelyLow),
    likelyHigh: ends(({ likelyHigh }) => likelyHigh),
    missing: all.flatMap(({ missing }) => missing),
    provisional: all.flatMap(({ provisional }) => provisional),
    sources: [...new Set(all.flatMap(({ sources }) => sources))],
  };
}
