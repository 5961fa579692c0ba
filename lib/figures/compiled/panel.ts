import type { Nutrient } from '#lib/foods/nutrients';
import type { Figure } from '#lib/figures/figure';
import type { Region } from '#lib/figures/line-parts';

/** The nutrients that figures are asked for, in order, in a region's words. */
export interface Panel {
  readonly region: Region;
  readonly nutrients: readonly Nutrient[];
  /** A set that names each nutrient, in order, and holds no figure: a copy of it has room for all from the start. */
  readonly blank: Partial<Readonly<Record<Nutrient, Figure>>>;
}

/** Stands in a set until there is a figure. */
const NOT_YET = undefined as unknown as Figure;

/** Callers ask for a handful of lists; beyond this many they are forgotten and compiled anew. */
const MOST = 64;
const panels = new Map<string, Panel>();

/** The one object of a region and a list of nutrients, so that what is compiled for it can be kept by it. */
export function panelOf(region: Region, nutrients: readonly Nutrient[]): Panel {
  const key = `${region}:${nutrients.join()}`;
  const known = panels.get(key);
  if (known) return known;
  if (panels.size >= MOST) panels.clear();
  const blank = Object.fromEntries(nutrients.map((each) => [each, NOT_YET]));
  const panel = { region, nutrients: [...nutrients], blank };
  panels.set(key, panel);
  return panel;
}
