/** SR28 was released in September 2015; its first day, 2015-09-01T00:00:00Z, in milliseconds. */
const RELEASED_MS = 1_441_065_600_000;

const KINDS = { food: 0, version: 1, measure: 2, yield: 3, allergen: 4 } as const;

/**
 * The id of a reference food, the same on every machine: shaped as a UUID of version 7 (RFC 9562 5.7)
 * whose time is the day SR28 was released, whose `rand_a` is 0, and whose last twelve digits are the
 * food's number as printed. So ids sort by number, and a number can be read off its id.
 * `referenceFoodId('05062')` → `'014f8634-0400-7000-8000-000000005062'`.
 */
export function referenceFoodId(sourceNo: string): string {
  return referencePartId('food', sourceNo, 0);
}

/**
 * The id of something that belongs to a reference food: as `referenceFoodId`, with the kind of part in
 * `rand_a` and its index (0 to 16383) in the fourth group.
 * `referencePartId('measure', '05062', 1)` → `'014f8634-0400-7002-8001-000000005062'`.
 */
export function referencePartId(kind: keyof typeof KINDS, sourceNo: string, index: number): string {
  if (!/^\d{5}$/.test(sourceNo)) {
    throw new Error(`A reference food's number has five digits, got "${sourceNo}"`);
  }
  if (!Number.isInteger(index) || index < 0 || index > 0x3fff) {
    throw new Error(`Index ${index} of a ${kind} of food ${sourceNo} is not in 0..16383`);
  }
  const time = RELEASED_MS.toString(16).padStart(12, '0');
  const variant = (0x8000 + index).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-700${KINDS[kind]}-${variant}-${sourceNo.padStart(12, '0')}`;
}
