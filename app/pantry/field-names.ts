/** Fields that are named by what they are for: a value of a nutrient, a second column, an allergen. */
export const VALUE = 'value-';
export const SECOND = 'second-';
export const CONTAINS = 'contains-';
export const MAY = 'may-';

/** The form's field for a place in a label version: `values.fat` → `value-fat`. */
export function labelField(path: string): string {
  return path
    .replace(/^secondColumn\.values\.?/, SECOND)
    .replace(/^values\.?/, VALUE)
    .replace(/^serving.*/, 'servingG');
}
