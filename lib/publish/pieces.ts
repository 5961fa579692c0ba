import { amountContext, dishesOf, type Dish } from '#lib/episode/context';
import { nestedRecipe } from '#lib/episode/made-from';
import type { DescriptionForm, Piece } from '#lib/episode/publish-schema';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { cautions } from '#lib/publish/cautions';
import { markNotes } from '#lib/publish/description/mark-notes';
import { allergenLines } from '#lib/publish/description/safety-blocks';
import { heading, lines, paragraphs, type Section } from '#lib/publish/document/document';
import { render, textLength, type TextLength } from '#lib/publish/document/render';
import type { NumbersToPublish } from '#lib/publish/from-lock';
import {
  LEAVES_OUT,
  numbersOfDay,
  numbersOfDishes,
  type PiecePart,
} from '#lib/publish/piece-numbers';

/** The text of something that goes out by itself, with the numbers of its episode. */
export interface PieceText {
  /** Exactly what is pasted. */
  readonly text: string;
  readonly length: TextLength;
  /** In code points, as `length.codePoints` counts. */
  readonly limit: number;
  readonly fits: boolean;
  /** What it would have had and was left out so that it fits. */
  readonly without: readonly PiecePart[];
  /** It had dishes, and none of them is in the episode any more. */
  readonly empty: boolean;
}

/**
 * The text of a piece: its own title, the numbers of its dishes or of the day, their ingredients, allergens, cautions
 * and disclosure. What is missed least is left out until it fits; numbers with what their marks mean, allergens, cautions
 * and disclosure never are.
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
  const without: PiecePart[] = [];
  const made = (all: readonly PiecePart[]) => render(sections(publish, piece, dishes, all), form);
  let text = made(without);
  for (const part of LEAVES_OUT) {
    if (textLength(text).codePoints <= piece.limit) break;
    const shorter = made([...without, part]);
    if (shorter === text) continue;
    without.push(part);
    text = shorter;
  }
  const length = textLength(text);
  return {
    ...{ text, length },
    limit: piece.limit,
    fits: length.codePoints <= piece.limit,
    without,
    empty: dishes?.length === 0,
  };
}

function sections(
  publish: NumbersToPublish,
  { title }: Piece,
  dishes: readonly Dish[] | null,
  without: readonly PiecePart[],
): Section[] {
  const { hook, disclosure } = publish.file.episode;
  const numbers =
    dishes === null ? numbersOfDay(publish, without) : numbersOfDishes(publish, dishes, without);
  return [
    heading(1, title),
    dishes === null && !without.includes('hook') ? paragraphs(hook) : [],
    ...numbers.sections,
    ...markNotes(publish, numbers.shown),
    // Those of the whole episode: what is in another dish is told too, and nothing of this one is left out.
    allergenLines(publish, 'Allergens in the episode:'),
    lines(...cautions(cautionedOf(publish, dishes), { sourcesNamed: false })),
    paragraphs(disclosure),
  ];
}

/** Inside temperatures of its own dishes, and of those that they are made from at any depth. */
function cautionedOf({ file }: NumbersToPublish, dishes: readonly Dish[] | null): EpisodeFile {
  if (dishes === null) return file;
  const context = amountContext(file);
  const within = new Set<string>();
  const goInto = (recipe: Recipe) => {
    if (within.has(recipe.id)) return;
    within.add(recipe.id);
    for (const line of recipe.lines) {
      const nested = nestedRecipe(line, context);
      if (nested) goInto(nested);
    }
  };
  for (const { recipe } of dishes) goInto(recipe);
  const segments = file.episode.segments.filter(({ recipe }) => recipe && within.has(recipe.id));
  return { ...file, episode: { ...file.episode, segments } };
}
