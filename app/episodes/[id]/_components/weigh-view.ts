import { amountContext } from '#lib/episode/context';
import { gramsByLine } from '#lib/episode/reading-shares';
import { lastContainerMg, lastScaleId, onScale, waitingReading } from '#lib/episode/scale-so-far';
import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { lineReadings } from '#lib/figures/readings';
import { localMoment } from '#lib/units/local-date';
import { scaleGramsText } from '#lib/units/scale-grams';
import type { Sharing } from './weigh-shares';
import type { Held } from './weigh-ways';

/** What a new reading of an ingredient, or of the finished dish for null, is held against. */
export function heldFor(recipe: Recipe, line: RecipeLine | null, kitchen: Kitchen): Held {
  const total = line === null ? null : onScale(recipe);
  const waiting = waitingReading(recipe, line?.id ?? null);
  return {
    onScale: total && {
      id: total.id,
      mg: total.grossMg,
      words: afterWords(recipe, total, kitchen),
      running: total.afterId !== null,
    },
    waiting: waiting && {
      id: waiting.id,
      mg: waiting.grossMg,
      words: localMoment(new Date(waiting.at), kitchen.zone),
    },
    containerMg: lastContainerMg(recipe),
  };
}

/** Which ingredient was put on the scale last, and when. */
function afterWords(recipe: Recipe, { shares, at }: Weighing, kitchen: Kitchen): string {
  const names = shares.flatMap(({ lineId }) => recipe.lines.find(({ id }) => id === lineId) ?? []);
  const after = names.map(({ text }) => text).join(' and ');
  return `${after ? `after ${after}, ` : ''}${localMoment(new Date(at), kitchen.zone)}`;
}

/** The scale that a form proposes: the one used last in the dish, else the kitchen's first. */
export function scaleFor(recipe: Recipe, kitchen: Kitchen): string {
  const last = lastScaleId(recipe);
  const known = kitchen.scales.find(({ id }) => id === last) ?? kitchen.scales[0];
  return known?.id ?? '';
}

/** The ingredients that may share a reading, each with its grams as the part that is proposed. */
export function sharingOf(
  file: EpisodeFile,
  recipe: Recipe,
  line: RecipeLine,
  words: string,
): Sharing {
  const grams = gramsByLine(recipe, amountContext(file));
  const sharer = ({ id, text }: RecipeLine) => {
    const mg = grams.get(id);
    return { id, text, parts: mg === undefined ? '' : scaleGramsText(mg) };
  };
  const own = sharer(line);
  const others = recipe.lines.filter(({ id }) => id !== line.id).map(sharer);
  return { own, others, all: [own, ...others], words };
}

/** The ingredient after this one that was not weighed yet; null where none is left. */
export function nextToWeigh(recipe: Recipe, lineId: string): { id: string; text: string } | null {
  const at = recipe.lines.findIndex(({ id }) => id === lineId);
  const next = recipe.lines
    .slice(at + 1)
    .find(({ id }) => lineReadings(recipe, id).readings.length === 0);
  return next ? { id: next.id, text: next.text } : null;
}
