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
    .replace(/^serving\.perPack$/, 'perPack')
    .replace(/^serving(?:\..*)?$/, 'servingG');
}

/** The name of the button that puts a likely slip right, and its value: the fields with their right texts. */
export const MEND = 'mend';

/** `[['value-protein', '24']]` → `'value-protein=24'`, as an address writes it. */
export function mendValue(changes: readonly (readonly [field: string, text: string])[]): string {
  return new URLSearchParams(changes.map(([field, text]) => [field, text])).toString();
}

/** The fields of a mend and their texts; only fields of a label. */
export function readMend(value: string): Record<string, string> {
  return Object.fromEntries(
    [...new URLSearchParams(value)].filter(([field]) => LABEL_FIELD.test(field)),
  );
}

const LABEL_FIELD = /^(?:servingG|(?:value|second)-[A-Za-z0-9]{1,40})$/;
