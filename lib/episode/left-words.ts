import type { LEFT_PLACES } from '#lib/episode/recipe-schema';

/** Where something stays behind, as every page says it. */
export const LEFT_WORDS: Readonly<Record<(typeof LEFT_PLACES)[number], string>> = {
  pan: 'the pan',
  tray: 'the tray',
  bowl: 'the bowl',
  marinade: 'the marinade',
  brine: 'the brine',
  water: 'the cooking water',
  plate: 'the plate',
  other: 'something else',
};
