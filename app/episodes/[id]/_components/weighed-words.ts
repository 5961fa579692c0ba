import type { Choice } from '../../../_ui/form/field';
import { STATE_WORDS } from '../../../_ui/words';
import { amountContext } from '#lib/episode/context';
import { cookWeights } from '#lib/episode/cook-weights';
import { LEFT_WORDS } from '#lib/episode/left-words';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { lineReadings, type Reading } from '#lib/figures/readings';
import { localMoment } from '#lib/units/local-date';
import { printTo } from '#lib/units/print';
import { gramsText } from '#lib/units/read-quantity';
import { scaleGramsText } from '#lib/units/scale-grams';

/** The kitchen's scales, with what each can tell apart. */
export function scaleChoices(kitchen: Kitchen): readonly Choice[] {
  return kitchen.scales.map(({ id, name, resolutionMg }) => ({
    value: id,
    words: `${name}, in steps of ${exactGrams(resolutionMg)}`,
  }));
}

/** Grams as a scale shows them: nothing is rounded. `252_500` → `'252.5 g'`. */
export function exactGrams(mg: number): string {
  return `${scaleGramsText(mg)} g`;
}

/** When a reading was taken, by the kitchen's clock. */
export function momentOf({ weighing }: Reading, kitchen: Kitchen): string {
  return localMoment(new Date(weighing.at), kitchen.zone);
}

/** How a reading came about: `'810 g less 413 g, on Flat scale'`. */
export function readingWords({ weighing, shared }: Reading, kitchen: Kitchen): string {
  const { grossMg, tareMg, scaleId, method, afterId } = weighing;
  const scale = kitchen.scales.find(({ id }) => id === scaleId)?.name ?? 'a scale no longer listed';
  const less = tareMg > 0 ? `${exactGrams(grossMg)} less ${exactGrams(tareMg)}, ` : '';
  const how =
    method === 'difference' ? ', by difference' : afterId === null ? '' : ', in a running total';
  return `${less}on ${scale}${how}${shared ? ', shared with other ingredients' : ''}`;
}

/** What was weighed of an ingredient and when, in a few words; null before it was weighed. */
export function weighedWords(recipe: Recipe, lineId: string, kitchen: Kitchen): string | null {
  const { readings, soFarMg } = lineReadings(recipe, lineId);
  const last = readings.at(-1);
  if (!last) return null;
  const times = readings.length > 1 ? ` in ${readings.length} readings, the last` : ',';
  return `weighed ${exactGrams(soFarMg)}${times} ${momentOf(last, kitchen)}`;
}

/** What one more reading of an ingredient does to its figures. */
export function addsToWords(recipe: Recipe, line: RecipeLine): string {
  const { readings, soFarMg } = lineReadings(recipe, line.id);
  const as = `${STATE_WORDS[line.state]}${line.asBought ? ', with peel, shell or ends' : ''}`;
  if (readings.length === 0) {
    return `Nothing weighed yet. Once weighed, the grams on the scale count instead of the amount as written. Weigh it ${as}.`;
  }
  return `A new reading adds to what was weighed: ${exactGrams(soFarMg)} so far. Weigh it ${as}. To replace a reading, take it back first.`;
}

/** Raw and cooked weight of one cook: `'360 g cooked from 500 g raw: 72 % of the raw weight'`; null without both. */
export function cookedWords(file: EpisodeFile, recipe: Recipe, line: RecipeLine): string | null {
  const weights = cookWeights(line, recipe.weighings, amountContext(file));
  if (!weights) return null;
  const { rawMg, cookedMg, percent } = weights;
  return `${exactGrams(cookedMg)} cooked from ${exactGrams(rawMg)} raw: ${printTo(percent, 1)} % of the raw weight`;
}

/** What stays behind of an ingredient, in words; null where all of it is eaten. */
export function leftWords(recipe: Recipe, line: RecipeLine): string | null {
  const { leftBehind } = line;
  const { readings, soFarMg } = lineReadings(recipe, line.id, 'left');
  if (leftBehind.kind === 'none') {
    if (readings.length === 0) return null;
    return `${exactGrams(soFarMg)} left were weighed and do not count: its form says that nothing is left`;
  }
  const where = `in ${LEFT_WORDS[leftBehind.where]}`;
  const what = leftBehind.made === 'fat' ? ' of fat' : '';
  if (leftBehind.kind === 'mass') return `${gramsText(leftBehind)} g${what} left ${where}`;
  if (readings.length === 0) return `what is left ${where} is still to be weighed`;
  return `${exactGrams(soFarMg)}${what} left ${where}, weighed`;
}

/** The reading of an ingredient's container that waits for its second one, in words; null where none does. */
export function waitingWords(recipe: Recipe, lineId: string): string | null {
  const last = lineReadings(recipe, lineId, 'container').readings.at(-1);
  return last ? `${exactGrams(last.weighing.grossMg)} read once, to be read again` : null;
}
