import type { Choice } from '../../../_ui/form/field';
import { STATE_WORDS } from '../../../_ui/words';
import type { Kitchen, Recipe, RecipeLine } from '#lib/episode/schema';
import { lineReadings, type Reading } from '#lib/figures/readings';
import { localMoment } from '#lib/units/local-date';
import { gramsText } from '#lib/units/read-quantity';

/** The kitchen's scales, with what each can tell apart. */
export function scaleChoices(kitchen: Kitchen): readonly Choice[] {
  return kitchen.scales.map(({ id, name, resolutionMg }) => ({
    value: id,
    words: `${name}, in steps of ${exactGrams(resolutionMg)}`,
  }));
}

/** Grams as a scale shows them: nothing is rounded. `252_500` → `'252.5 g'`. */
export function exactGrams(mg: number): string {
  return `${gramsText({ lowMg: mg, valueMg: mg, highMg: mg })} g`;
}

/** When a reading was taken, by the kitchen's clock. */
export function momentOf({ weighing }: Reading, kitchen: Kitchen): string {
  return localMoment(new Date(weighing.at), kitchen.zone);
}

/** How a reading came about: `'810 g less 413 g, on Flat scale'`. */
export function readingWords({ weighing, shared }: Reading, kitchen: Kitchen): string {
  const { grossMg, tareMg, scaleId, method } = weighing;
  const scale = kitchen.scales.find(({ id }) => id === scaleId)?.name ?? 'a scale no longer listed';
  const less = tareMg > 0 ? `${exactGrams(grossMg)} less ${exactGrams(tareMg)}, ` : '';
  const how = method === 'difference' ? ', by difference' : '';
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
