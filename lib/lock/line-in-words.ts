import { LEFT_WORDS } from '#lib/episode/left-words';
import type { Portion, Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Field } from '#lib/lock/inputs-in-words';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { STATE_WORDS } from '#lib/foods/state-words';
import { gramsText, quantityText, ratioText } from '#lib/units/read-quantity';
import { permilleTyped } from '#lib/units/read-typed';
import { scaleGramsText } from '#lib/units/scale-grams';

/** What an ingredient's number rests on, in words; its own words are not among it. */
export function lineFields(
  line: RecipeLine,
  foods: ReadonlyMap<string, string>,
  titles: ReadonlyMap<string, string>,
): readonly Field[] {
  const { asBought, bounded, cookMethod, madeFrom, photographed, planned, retention } = line;
  const name = (id: string | null) => (id === null ? '' : (foods.get(id) ?? id));
  const amount = line.quantity
    ? [quantityText(line.quantity), line.unit, line.measureName].filter(Boolean).join(' ')
    : [line.unit, line.measureName].filter(Boolean).join(' ');
  return [
    ['food', name(line.foodId)],
    ['or food', name(line.orFoodId)],
    ['made from', madeFrom === null ? '' : (titles.get(madeFrom.recipeId) ?? madeFrom.recipeId)],
    ['grams', planned === null ? '' : `${gramsText(planned)} g`],
    ['amount', amount],
    ['state', STATE_WORDS[line.state]],
    ['weighed with peel and trim', asBought ? 'yes' : 'no'],
    ['left behind', leftText(line.leftBehind)],
    ['cooked', cookMethod ?? ''],
    ['loss in cooking', retention ?? ''],
    [
      'bounded',
      bounded
        .map(({ nutrient, maxPer100 }) => {
          const { label, unit } = NUTRIENTS[nutrient];
          return `${label} up to ${String(maxPer100)} ${unit} in 100 g`;
        })
        .join(', '),
    ],
    ['weight in a photo, not typed yet', photographed ? 'yes' : ''],
  ];
}

function leftText(left: RecipeLine['leftBehind']): string {
  if (left.kind === 'none') return 'none';
  const what = `${left.made === 'fat' ? ' of fat' : ''} in ${LEFT_WORDS[left.where]}`;
  return left.kind === 'mass' ? `${gramsText(left)} g${what}` : `as weighed${what}`;
}

/** `'1 of 4'`, `'150 g of the finished dish'`, `'1/3 by eye, ± 15 %'`. */
export function portionText(portion: Portion): string {
  if (portion.kind === 'count') return `1 of ${String(portion.of)}`;
  if (portion.kind === 'mass') return `${scaleGramsText(portion.massMg)} g of the finished dish`;
  return `${ratioText(portion.share)} by eye, ± ${permilleTyped(portion.permille)} %`;
}

/** A reading as it was taken: `'412 g less 100 g, raw, “onion”, on flat scale'`. */
export function readingText(
  { kind, grossMg, tareMg, scaleId, method, afterId, shares }: Weighing,
  { lines }: Recipe,
  kitchen: EpisodeFile['kitchen'],
): string {
  const of = shares.map(({ lineId, share }) => {
    const text = lines.find(({ id }) => id === lineId)?.text ?? lineId;
    const part = share.num === share.den ? '' : `${ratioText(share)} of it `;
    return `${part}“${text}”`;
  });
  return [
    `${scaleGramsText(grossMg)} g${tareMg > 0 ? ` less ${scaleGramsText(tareMg)} g` : ''}`,
    kind,
    ...of,
    `on ${kitchen.scales.find(({ id }) => id === scaleId)?.name ?? scaleId}`,
    ...(method === 'difference' ? ['by difference'] : []),
    ...(afterId === null ? [] : ['in a running total']),
  ].join(', ');
}
