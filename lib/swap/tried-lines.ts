import { amountContext, dishesOf } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { gramsOf, oneOfIt } from '#lib/swap/counted-amount';
import { textAtAmount } from '#lib/swap/text-at-amount';
import { printGrams } from '#lib/units/print';
import { quantityText } from '#lib/units/read-quantity';
import { MEASURE_WORDS } from '#lib/units/unit-words';

/** An ingredient as it is tried out. */
export interface TriedLine {
  readonly id: string;
  readonly text: string;
  /** `'203 g'`, `'3 slice, 120 g'`; null where nobody knows. */
  readonly amount: string | null;
  /** `same`: nothing is tried with it; `out`: left out; `new`: added. */
  readonly kind: 'same' | 'changed' | 'out' | 'new';
  /** What one of it is called where it is counted; null where it is weighed. */
  readonly counted: string | null;
}

/** The ingredients of a dish with what is tried with each, those left out in their place, new ones last. */
export function triedLines(
  before: EpisodeFile,
  after: EpisodeFile,
  segmentId: string,
): readonly TriedLine[] {
  const [was, becomes] = [before, after].map(({ episode }) =>
    dishesOf(episode.segments).find(({ id }) => id === segmentId),
  );
  if (!was || !becomes) return [];
  const context = amountContext(after);
  const told = (line: RecipeLine, recipe: Recipe, kind: TriedLine['kind']): TriedLine => {
    const grams = gramsOf(line, recipe, context);
    const counted = oneOfIt(line, recipe, context) === null ? null : nameOfOne(line);
    const count = counted && line.quantity ? `${quantityText(line.quantity)} × ${counted}, ` : '';
    const amount = grams && `${count}${printGrams(grams.valueMg)} g`;
    return { id: line.id, text: line.text, amount, kind, counted };
  };
  const now = new Map(becomes.recipe.lines.map((line) => [line.id, line]));
  const old = new Set(was.recipe.lines.map(({ id }) => id));
  return [
    ...was.recipe.lines.map((line) => {
      const is = now.get(line.id);
      if (!is) return told(line, was.recipe, 'out');
      if (sameLine(line, is)) return told(is, becomes.recipe, 'same');
      return { ...told(is, becomes.recipe, 'changed'), text: textAtAmount(is) };
    }),
    ...becomes.recipe.lines
      .filter(({ id }) => !old.has(id))
      .map((line) => told(line, becomes.recipe, 'new')),
  ];
}

function sameLine(a: RecipeLine, b: RecipeLine): boolean {
  return a.foodId === b.foodId && a.planned === b.planned && a.quantity === b.quantity;
}

/** What one of a counted ingredient is called: its measure's own name, else its unit's. */
function nameOfOne({ measureName, unit }: RecipeLine): string {
  const words: Readonly<Record<string, string>> = MEASURE_WORDS;
  return measureName ?? words[unit ?? ''] ?? unit ?? 'piece';
}
