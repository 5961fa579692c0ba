import 'server-only';
import { dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { swapView } from '#lib/publish/swap-view';
import type { ViewerAnswer } from '#lib/publish/viewer-answer';
import { matchFoods } from '#lib/store/match-foods';
import { findFoods } from '#lib/store/reference-search';
import { readSwapQuestion, type AskedSwap } from '#lib/swap/swap-question';
import { readSwaps } from '../swaps/read-swaps';
import { dishSwapsHref } from '../swaps/steps-text';

/** A swap that a comment asks for, as it is offered. */
export interface OfferedSwap {
  readonly dish: string;
  /** The ingredient as it stands in the dish. */
  readonly line: string;
  /** The food in its place, in the viewer's words; null where it is to be left out. */
  readonly other: string | null;
  /** The food of the pantry or the table that is taken for it; null where none is called so. */
  readonly food: string | null;
  /** Where it is tried, with both filled in. */
  readonly href: string;
  /** To answer with; empty where nobody can say. */
  readonly sentence: string;
}

/** The swap that a comment asks for, tried with the numbers that go out; null where it asks for none. */
export async function readAskedSwap(
  file: EpisodeFile,
  comment: string,
  answer: Pick<ViewerAnswer, 'dish' | 'why'>,
): Promise<OfferedSwap | null> {
  const all = dishesOf(file.episode.segments);
  const first = answer.why === 'named' || answer.why === 'chosen' ? answer.dish : null;
  const dishes = first ? [first, ...all.filter(({ id }) => id !== first.id)] : all;
  const foods = new Map(file.foods.map(({ id, name }) => [id, name]));
  const asked = readSwapQuestion(comment, dishes, foods);
  const dish = all.find(({ id }) => id === asked?.segmentId);
  const line = dish?.recipe.lines.find(({ id }) => id === asked?.lineId);
  if (!asked || !dish || !line) return null;
  const food = asked.other === null ? null : await foodCalled(asked.other);
  const step = stepOf(asked, food?.id ?? null);
  const place = step ? { steps: [step], told: true } : { line: line.id };
  return {
    ...{ dish: dish.title, line: line.text, other: asked.other, food: food?.name ?? null },
    href: dishSwapsHref(file.episode.id, dish.id, place),
    sentence: step ? await sentenceOf(file, asked, step) : '',
  };
}

/** The food that is plainly meant, else the one that is called most like it. */
async function foodCalled(words: string) {
  const [meant] = await matchFoods([words]);
  if (meant) return meant.food;
  const [best] = await findFoods(words, { take: 1, products: false });
  return best ?? null;
}

function stepOf({ lineId, other }: AskedSwap, foodId: string | null): SwapStep | null {
  if (other === null) return { kind: 'leaveOut', lineId };
  return foodId === null ? null : { kind: 'food', lineId, foodId, massMg: null };
}

/** As the page of swaps says it, with the viewer's own word for the food. */
async function sentenceOf(
  { episode }: EpisodeFile,
  { segmentId, own, other }: AskedSwap,
  step: SwapStep,
): Promise<string> {
  const read = await readSwaps(episode.id, [step], segmentId);
  const name = other ?? `no ${own}`;
  const told = read && swapView(read.file, { id: 'asked', segmentId, name, steps: [step] });
  return told?.ok ? (told.value.sentences[0]?.text ?? '') : '';
}
