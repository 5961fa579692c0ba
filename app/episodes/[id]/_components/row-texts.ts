import type { Ratio } from '#lib/episode/fields';
import type { EpisodeFile, Episode, Segment } from '#lib/episode/schema';
import { printRuntime } from '#lib/units/print';
import { quantityText } from '#lib/units/read-quantity';
import { lineTexts } from './line-texts';

type Texts = Readonly<Record<string, string>>;

/** The texts of a segment's form. */
export function segmentTexts(segment: Segment) {
  return {
    title: segment.title,
    planned: printRuntime(segment.plannedS),
    batches: ratioText(segment.batches),
    spareTakes: String(segment.spareTakes),
    pickupReserve: String(segment.pickupReserve),
    spareScope: segment.spareScope,
  };
}

/** The texts of the episode's own form. */
export function episodeTexts({ title, hook, region, publishOn, disclosure }: Episode) {
  return { title, hook, region, publishOn: publishOn ?? '', disclosure };
}

/** A share as it can be typed again. */
export function ratioText(value: Ratio): string {
  return quantityText({ low: value, high: value });
}

/** The texts that the form of a row shows: episode, segment, ingredient or sentence; null where it is gone. */
export function rowTexts({ episode, foods }: EpisodeFile, rowId: string): Texts | null {
  if (episode.id === rowId) return episodeTexts(episode);
  for (const segment of episode.segments) {
    if (segment.id === rowId) return segmentTexts(segment);
    const point = segment.talkingPoints.find(({ id }) => id === rowId);
    if (point) return { text: point.text };
    const line = segment.recipe?.lines.find(({ id }) => id === rowId);
    if (!line) continue;
    const counted = foods.find(({ id }) => id === line.foodId) ?? null;
    const { food, asBought, spoiltByTake, leftWeighed, ...texts } = lineTexts(line, counted);
    return {
      ...texts,
      foodId: food?.id ?? '',
      foodIdWords: food ? `counted as ${food.name}` : 'no food chosen',
      asBought: asBought ? 'on' : '',
      spoiltByTake: spoiltByTake ? 'on' : '',
      leftWeighed: leftWeighed ? 'on' : '',
    };
  }
  return null;
}
