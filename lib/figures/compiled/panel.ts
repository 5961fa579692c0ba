import type { Nutrient } from '#lib/foods/nutrients';
import type { Region } from '#lib/figures/line-parts';

/** The nutrients that figures are asked for, in order, in a region's words. */
export interface Panel {
  readonly region: Region;
  readonly nutrients: readonly Nutrient[];
}

/** Callers ask for a handful of lists; beyond this many they are forgotten and compiled anew. */
const MOST = 64;
const panels = new Map<string, Panel>();

/** The one object of a region and a list of nutrients, so that what is compiled for it can be kept by it. */
export function panelOf(region: Region, nutrients: readonly Nutrient[]): Panel {
  const key = `${region}:${nutrients.join()}`;
  const known = panels.get(key);
  if (known) return known;
  if (panels.size >= MOST) panels.clear();
  const panel = { region, nutrients: [...nutrients] };
  panels.set(key, panel);
  return panel;
}
