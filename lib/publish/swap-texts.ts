import type { EpisodeFile } from '#lib/episode/schema';
import { daySets, daySwap } from '#lib/swap/day-swaps';
import { swapDifference } from '#lib/swap/swap-difference';
import { daySentence, swapSentence } from '#lib/swap/swap-words';

/** One line for each saved swap, and for those of several dishes under one name; none for a swap of what the file does not have any more. */
export function swapTexts(file: EpisodeFile): readonly string[] {
  const known = TOLD.get(file);
  if (known) return known;
  const told = textsOf(file);
  TOLD.set(file, told);
  return told;
}

/** A page writes several descriptions of one file, and what a swap does is much to work out. */
const TOLD = new WeakMap<EpisodeFile, readonly string[]>();

function textsOf(file: EpisodeFile): readonly string[] {
  const variants = file.publish?.variants ?? [];
  return [
    ...variants.flatMap((variant) => {
      const told = swapDifference(file, variant);
      return told.ok ? [swapSentence(file, told.value)] : [];
    }),
    ...daySets(variants).flatMap((set) => {
      const told = daySwap(file, set);
      return told.ok ? [daySentence(file, told.value)] : [];
    }),
  ];
}
