import { hedgeBehind } from '../numbers/hedge-behind';
import { compared, moreThan, shareOf } from './comparisons';
import { differenceBy } from './differences';
import { ofIngredient } from './of-ingredient';
import type { Noun, Quantity, Said } from '../numbers/quantity';
import { only, type Text } from '../words/text';
import { isDishWord } from '../words/dish-word';

/**
 * What a number says of a nutrient: by its unit, by the noun that it was given, or by what it is compared with. Null
 * where it states none by itself.
 * @param before numbers that say something, in the order of the text
 */
export function nutrientOf(
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Said | null {
  const { unit, noun } = quantity;
  if (unit?.of === 'share') return shareOf(text, quantity, before);
  const more = moreThan(text, quantity, before.at(-1));
  if (more) return more;
  if (unit?.of === 'energy' && unit.unit === 'kJ')
    return said('energyKj', 'kJ', text, quantity, before);
  if (!noun) return null;
  if (unit && unit.of !== 'mass' && unit.of !== 'energy') return null;
  const named = unit === null ? noun.unit : unit.unit;
  if (unit?.of === 'mass' && !['g', 'mg', 'µg'].includes(unit.unit)) return null;
  if (noun.nutrient === 'energyKcal' && unit?.of === 'mass') return null;
  if (unit === null && noun.nutrient !== 'energyKcal' && countsFoods(text, noun)) return null;
  // No food has so many grams: two numbers that captions ran together.
  if (unit === null && noun.unit === 'g' && quantity.high >= MOST_GRAMS) return null;
  const nutrient =
    unit?.unit === 'IU' ? (INTERNATIONAL[noun.nutrient] ?? noun.nutrient) : noun.nutrient;
  return said(nutrient, named, text, quantity, before);
}

/** Grams of a nutrient that a text would not say without their unit. */
const MOST_GRAMS = 1000;

/** '3 protein pastas': the number counts foods. */
function countsFoods({ tokens, language, food }: Text, { to }: Noun): boolean {
  const word = tokens[to]?.folded ?? '';
  // 'five fat, bun's extra' without the comma: the food begins what follows.
  if (language.patterns.ownsOrIs.test(tokens[to]?.text ?? '')) return false;
  return food(to)?.from === to || isDishWord(word, language);
}

const INTERNATIONAL: Partial<Record<Noun['nutrient'], Noun['nutrient']>> = {
  vitaminARae: 'vitaminAIu',
  vitaminDMicrograms: 'vitaminDIu',
};

function said(
  nutrient: Noun['nutrient'],
  unit: string,
  text: Text,
  quantity: Quantity,
  before: readonly Quantity[],
): Said {
  const { noun } = quantity;
  if (noun && noun.from >= quantity.end && only(text, quantity.end, noun.from, ['filler']))
    quantity.end = noun.to;
  const soft = hedgeBehind(text, quantity.end);
  if (soft && quantity.hedge === 'none') {
    quantity.hedge = soft.value;
    quantity.end = soft.next;
  }
  const gap =
    noun && noun.to <= quantity.begin
      ? only(text, noun.to, quantity.begin, ['filler', 'hedge'])
      : false;
  if (noun && gap && before.at(-1)?.noun !== noun) quantity.begin = noun.from;
  const base = { kind: 'nutrient' as const, nutrient, unit };
  if (quantity.against) return { ...base, scope: 'compared', against: quantity.against };
  const own =
    compared(text, quantity, before.at(-1)) ??
    differenceBy(text, quantity, before.at(-1)) ??
    ofIngredient(text, quantity, before);
  // 'that's another eighty calories': of what, nobody can say.
  const adds = text.marks.before('by', quantity.begin)?.role.swapped;
  const back = text.marks.before('back', quantity.begin);
  if (own === null && (adds || (back && !isOfPart(text, back.from))))
    quantity.killed ??= 'an addition';
  return { ...base, ...own };
}

/** Tokens from a word that points at a dish to its verb: 'this stew is another forty one'. */
const POINTED = 3;

/** Whether what comes in addition is of a part, or of a dish that is pointed at: 'this plate is another 780 calories'. */
function isOfPart({ marks, tokens, language }: Text, begin: number): boolean {
  const copula = marks.before('copula', begin);
  if (!copula) return false;
  if (marks.before('scope', copula.from)) return true;
  const from = Math.max(0, copula.from - POINTED);
  return tokens.slice(from, copula.from).some(({ folded }) => language.claims.thisOne.has(folded));
}
