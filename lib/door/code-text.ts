/** Capitals and digits of which no two look alike: without 0 O, 1 I L, 2 Z, 5 S, 8 B, and V beside U. */
export const ALPHABET = 'ACDEFGHJKMNPQRTUWXY34679';
export const CODE_LENGTH = 8;

/** A code as typed: in capitals, without spaces and dashes. `'acde-fghj'` → `'ACDEFGHJ'`. */
export function readCode(typed: string): string {
  return typed.replace(/[\s\u2010-\u2015-]/g, '').toUpperCase();
}

/** A code in two halves, as it is read and typed most easily. `'ACDEFGHJ'` → `'ACDE FGHJ'`. */
export function codeShown(code: string): string {
  return `${code.slice(0, CODE_LENGTH / 2)} ${code.slice(CODE_LENGTH / 2)}`;
}
