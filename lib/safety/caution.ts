/** Who published a figure and where in their text it stands. */
export interface Source {
  readonly title: string;
  readonly section: string;
}

/** A caution with its source; shown together with `FOLLOW_LOCAL_CODE`. */
export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly source: Source;
}

/** Stands under every list of cautions: this program informs, the local code and a licence decide. */
export const FOLLOW_LOCAL_CODE =
  'Follow your local food code and licensed practice; figures here are for information only.';

export const FOOD_SAFETY_CHART: Source = {
  title: 'FoodSafety.gov',
  section: 'Safe Minimum Internal Temperature Chart, 12 April 2019',
};
export const COLD_STORAGE_CHART: Source = {
  title: 'FoodSafety.gov',
  section: 'Cold Food Storage Chart',
};
export const FSIS_TWO_HOURS: Source = {
  title: 'USDA FSIS',
  section: 'Danger Zone (40 °F to 140 °F)',
};
export const FOOD_CODE_COOLING: Source = { title: 'FDA Food Code', section: '3-501.14(A)' };
export const FOOD_CODE_THAWING: Source = { title: 'FDA Food Code', section: '3-501.13' };
/** When to wash hands, a change of tasks among the rest [from memory]. */
export const FOOD_CODE_HANDS: Source = { title: 'FDA Food Code', section: '2-301.14' };

/** `sourceText(s)` → "FDA Food Code, 3-501.14(A)" */
export function sourceText(source: Source): string {
  return `${source.title}, ${source.section}`;
}
