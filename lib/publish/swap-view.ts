import { dishesOf } from '#lib/episode/context';
import type { Variant } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { ok, type Result } from '#lib/result';
import { printDifference, type PrintedDifference } from '#lib/swap/print-difference';
import { swapDifference } from '#lib/swap/swap-difference';
import { allergenCells, costCell, swapSentence } from '#lib/swap/swap-words';

/** One column of what a swap does: a part of the dish, the dish, or the day. */
export interface SwapColumn {
  readonly key: string;
  readonly words: string;
}

/** One figure, and its difference in each column. */
export interface SwapFigureRow {
  readonly nutrient: string;
  readonly label: string;
  readonly unit: string;
  readonly headline: boolean;
  readonly cells: readonly PrintedDifference[];
}

/** A swap as its page shows it. */
export interface SwapView {
  /** The episode as it would be. */
  readonly after: EpisodeFile;
  /** To answer with: of each portion and of the whole dish. */
  readonly sentences: readonly {
    readonly key: string;
    readonly words: string;
    readonly text: string;
  }[];
  readonly columns: readonly SwapColumn[];
  readonly rows: readonly SwapFigureRow[];
  readonly cost: string;
  readonly allergens: readonly string[];
  readonly remarks: readonly string[];
}

/** All that a swap does to a dish, in words; problems where it names what the file does not have. */
export function swapView(file: EpisodeFile, variant: Variant): Result<SwapView> {
  const told = swapDifference(file, variant);
  if (!told.ok) return told;
  const swap = told.value;
  const { region } = file.episode;
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === variant.segmentId);
  const equal = new Set(
    dish?.recipe.portions.flatMap(({ id, kind }) => (kind === 'count' ? [id] : [])),
  );
  const columns = [
    ...swap.portions.map(({ portionId, name, differences }) => ({
      ...{ key: portionId, differences },
      words: name || 'a portion',
    })),
    { key: 'whole', words: 'whole dish', differences: swap.whole },
    { key: 'day', words: 'the day', differences: swap.day },
  ];
  const nutrients = Object.values(swap.whole).map(({ nutrient }) => nutrient);
  const rows = nutrients.map((nutrient): SwapFigureRow => {
    const cells = columns.flatMap(({ differences }) => {
      const difference = differences[nutrient];
      return difference ? [printDifference(difference, region)] : [];
    });
    const { label = '', unit = '' } = cells[0] ?? {};
    const headline = HEADLINE_NUTRIENTS.some((each) => each === nutrient);
    return { nutrient, label, unit, headline, cells };
  });
  const costs = costCell(swap)[0]?.text;
  return ok({
    after: swap.after,
    sentences: [
      ...swap.portions.map(({ portionId, name }) => ({
        ...{ key: portionId, text: swapSentence(file, swap, portionId) },
        words: equal.has(portionId) ? 'A portion' : name,
      })),
      { key: 'whole', words: 'The whole dish', text: swapSentence(file, swap, null) },
    ],
    columns: columns.map(({ key, words }) => ({ key, words })),
    rows,
    cost: costs ?? (swap.cost.known ? '' : `Not known: ${swap.cost.why}.`),
    allergens: allergenCells(swap).map(({ text }) => text),
    remarks: swap.remarks.map(({ text }) => text),
  });
}
