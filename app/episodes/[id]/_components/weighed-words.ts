import type { Choice } from '../../../_ui/form/field';
import type { Kitchen, Recipe } from '#lib/episode/schema';
import { finishedReadings, lineReadings } from '#lib/figures/readings';
import { printGrams } from '#lib/units/print';

/** The kitchen's scales to choose from, each with its smallest step. */
export function scaleChoices(kitchen: Kitchen): readonly Choice[] {
  return kitchen.scales.map(({ id, name, resolutionMg }) => ({
    value: id,
    words: `${name}, in steps of ${printGrams(resolutionMg)} g`,
  }));
}

/** What was weighed of an ingredient so far. */
export function lineWeighedWords(recipe: Recipe, lineId: string): string {
  const { readings, soFarMg } = lineReadings(recipe, lineId);
  if (readings.length === 0) return '';
  return `${printGrams(soFarMg)} g so far; what is weighed now adds to it.`;
}

/** What the finished dish weighs. */
export function finishedWeighedWords(recipe: Recipe): string {
  const last = finishedReadings(recipe).at(-1);
  return last ? `${printGrams(last.netMg)} g at the last reading; a new one takes its place.` : '';
}
