import type { ShotMoment } from '#lib/episode/schema';

/** A moment of a dish, on screen. */
export const MOMENT_WORDS: Readonly<Record<ShotMoment, string>> = {
  ingredientsRaw: 'ingredients, raw',
  onTheScale: 'on the scale',
  intoTheHeat: 'into the oven or pan',
  outOfTheHeat: 'out of the oven or pan',
  still: 'the plate, untouched',
  cutOpen: 'cut open',
  firstBite: 'the first bite',
  number: 'the number',
};
