import type { MassUnit, VolumeUnit } from '#lib/units/units';

/** How units of mass and volume are written on screen. */
export const MEASURE_WORDS: Readonly<Record<MassUnit | VolumeUnit, string>> = {
  mg: 'mg',
  g: 'g',
  kg: 'kg',
  oz: 'oz',
  lb: 'lb',
  ml: 'ml',
  l: 'l',
  tsp: 'tsp',
  tbsp: 'tbsp',
  flOz: 'fl oz',
  cup: 'cup',
  pint: 'pint',
  quart: 'quart',
  gallon: 'gallon',
};
