import type { Portion } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import type { Choice } from '../../../_ui/form/field';

/** Everything a number can be about, as the form sends it: scope, segment and portion, one blank between. */
export function aboutChoices(segments: readonly Segment[]): Choice[] {
  const dishes = segments.flatMap(({ id, title, recipe }) =>
    recipe === null
      ? []
      : [
          { value: `whole ${id}`, words: `${title}: all of it` },
          ...recipe.portions.map((portion) => ({
            value: `portion ${id} ${portion.id}`,
            words: `${title}: ${portionWords(portion)}`,
          })),
          { value: `half ${id}`, words: `${title}: half of it` },
          { value: `per100g ${id}`, words: `${title}: 100 g of it` },
          { value: `soFar ${id}`, words: `The day so far, with ${title}` },
        ],
  );
  return [...dishes, { value: 'day', words: 'The whole day' }];
}

function portionWords(portion: Portion): string {
  if (portion.name !== '') return portion.name;
  return portion.kind === 'count' ? `one of ${portion.of}` : 'a portion';
}
