import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Food } from '#lib/foods/food';
import { fold } from '#lib/units/plain-words';

/**
 * What a food's refuse is made of, the words of a line by which it is bought without that or used with it, and those of
 * a food's name. Common practice, no source.
 */
const PARTS: readonly { refuse: RegExp; said: RegExp; name: RegExp }[] = [
  {
    refuse: /\b(?:bones?|backbone|carcass)\b/,
    said: /\b(?:boneless|deboned|without bones?|fillets?|fillet(?:t)?ed)\b/,
    name: /\bboneless\b/,
  },
  {
    refuse: /\b(?:skins?|peels?|peelings?|parings?|rind|separable fat)\b/,
    said: /\b(?:skinless|skinned|skin(?:s)?[- ]on|unpeeled|with (?:the |its |their )?(?:skins?|peel)|in (?:the |its |their )?skins?|without skin)\b/,
    name: /\b(?:skinless|(?:with|and|includes) (?:skin|peel)|unpeeled)\b/,
  },
];
/** What stands between those words, and what is trimmed off with them. */
const BETWEEN = /\b(?:and|or|the|trimmings?)\b|[^a-z]+/g;

/**
 * The percentage of refuse that has to be bought on top of what a line says is used: none where its words or the food's
 * name say that bone or skin is off already, or stays on. Where that is said of a part of it alone, all of it: how much
 * each part is nobody knows.
 * @example boughtRefuse of 'chicken thighs, skinless' and a food with 25 % skin and separable fat // 0
 */
export function boughtRefuse(line: Pick<RecipeLine, 'text' | 'note'>, food: Food): number {
  const { refuse } = food.version;
  if (!refuse || refuse.percent === 0) return 0;
  const said = fold(`${line.text} ${line.note}`);
  const name = fold(food.name);
  let left = fold(refuse.text);
  let isSaid = false;
  for (const part of PARTS) {
    if (!part.refuse.test(left) || !(part.said.test(said) || part.name.test(name))) continue;
    isSaid = true;
    left = left.replace(new RegExp(part.refuse, 'g'), ' ');
  }
  return isSaid && left.replace(BETWEEN, '') === '' ? 0 : refuse.percent;
}
