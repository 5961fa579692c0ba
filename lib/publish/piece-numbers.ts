import { amountContext, dishesOf, type Dish } from '#lib/episode/context';
import type { NumberScope } from '#lib/figures/published-numbers';
import { eatenLine, eatenNumbers, notCountedLine } from '#lib/publish/description/day-block';
import type { ShownNumbers } from '#lib/publish/description/mark-notes';
import { dayTitle, lineNutrients, numbersLine } from '#lib/publish/description/numbers-line';
import { heading, lines, list, type Section } from '#lib/publish/document/document';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import { ingredientText } from '#lib/publish/ingredient-text';
import { portionTitle } from '#lib/publish/portion-title';

/** What a piece has as long as it fits, in the order in which it is left out. */
export const LEAVES_OUT = ['ingredients', 'portions', 'hook', 'dishes'] as const;
export type PiecePart = (typeof LEAVES_OUT)[number];

/** The part of a piece that has its numbers, and which they are. */
export interface PieceNumbers {
  readonly sections: readonly Section[];
  readonly shown: readonly ShownNumbers[];
}

/** The numbers of dishes, each with its portions and ingredients; of several each has its title. */
export function numbersOfDishes(
  publish: NumbersToPublish,
  dishes: readonly Dish[],
  without: readonly PiecePart[],
): PieceNumbers {
  const all = dishes.map((dish): PieceNumbers => {
    const { id: segmentId, title, recipe } = dish;
    const whole = numbersOf(publish, 'The whole dish', {
      ...{ title, segmentId },
      scope: { kind: 'whole', segmentId },
    });
    const portions = (without.includes('portions') ? [] : recipe.portions).map((portion) =>
      numbersOf(publish, portionTitle(portion), {
        ...{ title: `${title}, ${portion.name}`, segmentId },
        scope: { kind: 'portion', portionId: portion.id },
      }),
    );
    const told = [whole, ...portions];
    const section = [
      ...(dishes.length > 1 ? heading(2, title) : []),
      ...lines(...told.map(({ line }) => line)),
      ...(without.includes('ingredients') ? [] : ingredientsOf(publish, dish, dishes)),
    ];
    return { sections: [section], shown: told.map(({ shown }) => shown) };
  });
  return {
    sections: all.flatMap(({ sections }) => sections),
    shown: all.flatMap(({ shown }) => shown),
  };
}

/** The numbers of the day, what each dish brings to it, and what was not counted. */
export function numbersOfDay(
  publish: NumbersToPublish,
  without: readonly PiecePart[],
): PieceNumbers {
  const title = dayTitle(publish.figures);
  const scope: NumberScope = { kind: 'day' };
  const day = numbersOf(publish, title, { title, segmentId: null, scope });
  const dishes = dishesOf(publish.file.episode.segments);
  const eaten = without.includes('dishes') || dishes.length < 2 ? [] : dishes;
  const section = lines(
    day.line,
    eaten.length === 0 ? '' : eatenLine(publish, eaten),
    notCountedLine(publish),
  );
  return { sections: [section], shown: [...eatenNumbers(publish, eaten), day.shown] };
}

function numbersOf(
  { file, numbers }: NumbersToPublish,
  words: string,
  of: Omit<ShownNumbers, 'nutrients'>,
): { readonly line: string; readonly shown: ShownNumbers } {
  const { region } = file.episode;
  return {
    line: `${words}: ${numbersLine(numbers, of.scope, region)}`,
    shown: { ...of, nutrients: lineNutrients(numbers, of.scope, region) },
  };
}

function ingredientsOf(
  { file }: NumbersToPublish,
  { recipe }: Dish,
  dishes: readonly Dish[],
): Section {
  const context = amountContext(file);
  const titles = new Map(dishes.map((each) => [each.recipe.id, each.title]));
  return list(recipe.lines.map((line) => ingredientText(line, recipe.weighings, context, titles)));
}
