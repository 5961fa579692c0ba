import { cellOf } from '#lib/foods/cell-of';
import type { FoodVersion } from '#lib/foods/food';
import { BASIS_WORDS } from '#lib/foods/label-column';
import { NUTRIENTS, STATED_NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { cellShown } from '#lib/foods/read-cell';
import { refuseText } from '#lib/foods/refuse-words';
import { STATE_WORDS } from '#lib/foods/state-words';
import { printedGramsTyped } from '#lib/units/read-typed';

/** One row of readings beside each other. */
export interface VersionRow {
  readonly label: string;
  readonly unit: string;
  /** What each reading says, in the order of the readings. */
  readonly cells: readonly VersionCell[];
}

export interface VersionCell {
  /** As printed, or "no value". */
  readonly text: string;
  /**
   * Against the reading before it: other digits (`changed`), the same (`same`), or not to be compared since the two
   * are stated for different amounts (`apart`). Null for the oldest.
   */
  readonly against: 'changed' | 'same' | 'apart' | null;
}

/**
 * Readings of one food beside each other: every nutrient that one of them states, and what else they say.
 * Digits are compared as printed, "0.50" with "0.5" too, since a maker who prints another digit has read anew.
 * @param versions readings in the order shown, each followed by the one before it in time
 * @example compareVersions([second, first])[0] // { label: 'stated for', cells: [{ text: '100 g', against: 'same' }, …] }
 */
export function compareVersions(versions: readonly FoodVersion[]): readonly VersionRow[] {
  const about: readonly VersionRow[] = [
    row('stated for', '', versions, basisText, () => true),
    row('fibre', '', versions, carbText, () => true),
    row(
      'holds for it',
      '',
      versions,
      ({ state }) => STATE_WORDS[state],
      () => true,
    ),
    row('peel and trim', '', versions, trimText, () => true),
  ];
  const stated = STATED_NUTRIENTS.filter((nutrient) =>
    versions.some(({ values }) => cellOf(values, nutrient).kind !== 'missing'),
  );
  const values = stated.map((nutrient) => {
    const { label, unit } = NUTRIENTS[nutrient];
    const text = (version: FoodVersion) => cellShown(cellOf(version.values, nutrient));
    return row(label, unit, versions, text, comparable(nutrient));
  });
  return [...about.filter(({ cells }) => cells.some(({ text }) => text !== '')), ...values];
}

/** How many rows differ from the reading before. `changeCount(rows, 0)` → of the first reading shown. */
export function changeCount(rows: readonly VersionRow[], at: number): number {
  return rows.filter(({ cells }) => cells[at]?.against === 'changed').length;
}

function row(
  label: string,
  unit: string,
  versions: readonly FoodVersion[],
  textOf: (version: FoodVersion) => string,
  together: (a: FoodVersion, b: FoodVersion) => boolean,
): VersionRow {
  const cells = versions.map((version, index): VersionCell => {
    const before = versions[index + 1];
    const text = textOf(version);
    if (!before) return { text, against: null };
    if (!together(version, before)) return { text, against: 'apart' };
    return { text, against: text === textOf(before) ? 'same' : 'changed' };
  });
  return { label, unit, cells };
}

function basisText({ basis, serving }: FoodVersion): string {
  if (basis !== 'serving' || serving === null) return BASIS_WORDS[basis];
  const amount =
    serving.massMg === null
      ? `${serving.volumeMl} ml`
      : `${printedGramsTyped(serving.massMg, serving.decimals)} g`;
  return [BASIS_WORDS.serving, serving.text, amount].filter(Boolean).join(', ');
}

const carbText = ({ carbBasis }: FoodVersion) =>
  carbBasis === 'total' ? 'inside carbohydrate' : 'beside carbohydrate';

const trimText = ({ refuse }: FoodVersion) => (refuse && refuseText(refuse)) ?? '';

/** Whether digits of two readings speak of the same amount, and carbohydrate of the same thing. */
function comparable(nutrient: Nutrient) {
  return (a: FoodVersion, b: FoodVersion): boolean => {
    if (a.basis !== b.basis) return false;
    if (nutrient === 'carbohydrate' && a.carbBasis !== b.carbBasis) return false;
    if (a.basis !== 'serving') return true;
    return a.serving?.massMg === b.serving?.massMg && a.serving?.volumeMl === b.serving?.volumeMl;
  };
}
