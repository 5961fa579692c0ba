import { ENGLISH } from '#lib/claims/english/english';
import { sameFood, shortNames, stemsOf } from '#lib/claims/words/foods';
import type { Language } from '#lib/claims/language';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { readIngredient } from '#lib/episode/read-ingredient';
import type { Food } from '#lib/foods/food';
import { saidShares } from '#lib/foods/said-shares';

/** The words of a name, and the one that says what kind of thing it is. */
interface Name {
  readonly words: readonly string[];
  readonly head: string | undefined;
}

/** Names of an ingredient: as it is written, and as its food is called in its table ('Chicken, breast, raw'). */
export interface IngredientNames {
  readonly written: Name | null;
  /** As it is called for short: 'vanilla' of 'vanilla extract'. */
  readonly short: readonly Name[];
  /** All that the ingredient says, 'left from Wednesday' too. */
  readonly all: readonly string[];
  readonly table: readonly Name[];
}

/** The names of an ingredient, read once. */
export function ingredientNames(
  line: Pick<RecipeLine, 'text'>,
  foods: readonly Pick<Food, 'name'>[],
  language: Language,
): IngredientNames {
  const [read] = readIngredient(line.text);
  const written = nameOf(saidShares(read?.food || line.text).rest, language);
  return {
    written,
    short: written ? shorter(written, language) : [],
    all: stemsOf(line.text, language),
    table: foods.map(({ name }) => nameOf(name, language)).filter((n) => n !== null),
  };
}

function nameOf(text: string, language: Language): Name | null {
  const [first = ''] = text.split(',');
  const words = stemsOf(text, language);
  const what = stemsOf(first.split(ENGLISH.judging.keptIn)[0] ?? '', language);
  return words.length === 0 ? null : { words, head: what.at(-1) };
}

function shorter({ words, head }: Name, language: Language): Name[] {
  if (head !== words.at(-1)) return [];
  return shortNames(words, language)
    .slice(1)
    .map((name) => ({ words: name, head: name.at(-1) }));
}

/**
 * How well a food that is said fits an ingredient: 4 by all its words, 3 where the ingredient says more of it, 2 by its
 * kind or for short, 1 as a part of an animal or the animal of a part; 0 where it is something else, as chicken is beside
 * chicken stock, or an egg beside egg whites.
 */
export function fitOf(
  said: readonly string[],
  { written, short, all, table }: IngredientNames,
): number {
  const byText = written ? fits(said, written) : 0;
  if (byText > 0) return byText;
  const byShort = Math.max(0, ...short.map((name) => Math.min(2, fits(said, name))));
  if (byShort > 0) return byShort;
  // 'browned turkey left' of 'browned ground turkey, left from Wednesday'.
  const head = written?.head;
  const besides = said.some((word) => !(written?.words.includes(word) ?? false));
  const everywhere = said.every((word) => all.includes(word));
  if (head !== undefined && said.includes(head) && besides && everywhere) return 2;
  const shared = written?.words.some((word) => said.includes(word)) ?? false;
  return shared ? 0 : Math.max(0, ...table.map((name) => Math.min(2, fits(said, name))));
}

function fits(said: readonly string[], { words, head }: Name): number {
  const own = said.at(-1);
  if (own === undefined || head === undefined) return 0;
  const every = said.every((word) => words.includes(word));
  // 'milk chocolate' is no 'chocolate milk'; 'chicken breast' is 'Chicken, breast'.
  const turned = own !== head && words.at(-1) === head;
  if (every && said.length === words.length && !turned) return 4;
  // 'tuna' is 'tinned tuna in water'.
  if (every && own === head) return 3;
  const within = every || words.every((word) => said.includes(word));
  if (!within || !sameFood(said, words)) return cutOf(said, words, head);
  if (own === head) return 2;
  // 'chicken breast' of 'Chicken, broilers or fryers, breast'.
  if (every && !turned && said[0] === head && said.length > 1) return 2;
  return cutOf(said, words, head);
}

function cutOf(said: readonly string[], words: readonly string[], head: string): number {
  const { cuts } = ENGLISH.judging;
  const own = said.at(-1) ?? '';
  if (cuts.has(head) && words.includes(own)) return 1;
  return cuts.has(own) && said.slice(0, -1).includes(head) && words.length <= 2 ? 1 : 0;
}
