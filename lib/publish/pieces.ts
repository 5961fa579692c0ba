import { amountContext, dishesOf, type Dish } from '#lib/episode/context';
import type { DescriptionForm, Piece } from '#lib/episode/publish-schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import { ALLERGEN_CAUTION, cautions } from '#lib/publish/cautions';
import { capitalised, numbersLine } from '#lib/publish/description/numbers-line';
import { heading, lines, list, paragraphs, type Section } from '#lib/publish/document/document';
import { render, textLength, type TextLength } from '#lib/publish/document/render';
import { ingredientText } from '#lib/publish/ingredient-text';
import type { NumbersToPublish } from '#lib/publish/from-lock';

/** What a piece has as long as it fits, in the order in which it is left out. */
const LEAVES_OUT = ['ingredients', 'portions', 'hook'] as const;
type Part = (typeof LEAVES_OUT)[number];

/** The text of something that goes out by itself, with the numbers of its episode. */
export interface PieceText {
  /** Exactly what is pasted. */
  readonly text: string;
  readonly length: TextLength;
  /** In UTF-16 units. */
  readonly limit: number;
  readonly fits: boolean;
  /** What it would have had and was left out so that it fits. */
  readonly without: readonly Part[];
  /** It had dishes, and none of them is in the episode any more. */
  readonly empty: boolean;
}

/**
 * The text of a piece: its own title, the numbers of its dishes or of the day, their ingredients, allergens, cautions
 * and disclosure. What is missed least is left out until it fits; numbers, allergens, cautions and disclosure never are.
 * @example pieceText(numbersToPublish(file, snapshot), clip).text
 */
export function pieceText(
  publish: NumbersToPublish,
  piece: Piece,
  form: DescriptionForm = 'plain',
): PieceText {
  const all = dishesOf(publish.file.episode.segments);
  const dishes =
    piece.segmentIds === null ? null : all.filter(({ id }) => piece.segmentIds?.includes(id));
  const without: Part[] = [];
  const made = (all: readonly Part[]) => render(sections(publish, piece, dishes, all), form);
  let text = made(without);
  for (const part of LEAVES_OUT) {
    if (text.length <= piece.limit) break;
    const shorter = made([...without, part]);
    if (shorter === text) continue;
    without.push(part);
    text = shorter;
  }
  return {
    text,
    length: textLength(text),
    limit: piece.limit,
    fits: text.length <= piece.limit,
    without,
    empty: dishes?.length === 0,
  };
}

function sections(
  publish: NumbersToPublish,
  { title }: Piece,
  dishes: readonly Dish[] | null,
  without: readonly Part[],
): Section[] {
  const { file, figures, numbers } = publish;
  const { region, hook, disclosure } = file.episode;
  const day = figures.dayIsWhole ? 'The whole day' : 'The dishes shown';
  return [
    heading(1, title),
    dishes === null && !without.includes('hook') ? paragraphs(hook) : [],
    ...(dishes === null
      ? [lines(`${day}: ${numbersLine(numbers, { kind: 'day' }, region)}`)]
      : dishes.map((dish) => dishSection(publish, dish, dishes.length > 1, without))),
    allergenLines(publish),
    lines(...cautions(onlyOf(publish, dishes), { sourcesNamed: false })),
    paragraphs(disclosure),
  ];
}

function dishSection(
  { file, numbers }: NumbersToPublish,
  { id, title, recipe }: Dish,
  named: boolean,
  without: readonly Part[],
): Section {
  const { region } = file.episode;
  const context = amountContext(file);
  const line = (words: string, scope: NumberScope) =>
    `${words}: ${numbersLine(numbers, scope, region)}`;
  const portions = recipe.portions.map((portion) =>
    line(capitalised(portion.name), { kind: 'portion', portionId: portion.id }),
  );
  return [
    ...(named ? heading(2, title) : []),
    ...lines(
      line('The whole dish', { kind: 'whole', segmentId: id }),
      ...(without.includes('portions') ? [] : portions),
    ),
    ...(without.includes('ingredients')
      ? []
      : list(recipe.lines.map((each) => ingredientText(each, recipe.weighings, context)))),
  ];
}

/** Those of the whole episode: what is in another dish is told too, and nothing that is in this one is left out. */
function allergenLines({ allergens }: NumbersToPublish): Section {
  const words = (all: typeof allergens.contains) => all.map((entry) => entry.words).join(', ');
  const { contains, mayContain } = allergens;
  if (contains.length + mayContain.length === 0) return [];
  return lines(
    contains.length > 0 ? `Allergens in the episode: ${words(contains)}.` : '',
    mayContain.length > 0 ? `May contain ${words(mayContain)}.` : '',
    ALLERGEN_CAUTION,
  );
}

/** Inside temperatures of its own dishes alone. */
function onlyOf({ file }: NumbersToPublish, dishes: readonly Dish[] | null) {
  if (dishes === null) return file;
  return { ...file, episode: { ...file.episode, segments: [...dishes] } };
}
