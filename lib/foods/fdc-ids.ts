/** FoodData Central opened in April 2019 (from memory); its first day, 2019-04-01T00:00:00Z, in milliseconds. */
const OPENED_MS = 1_554_076_800_000;

/** What a food is known by across releases: its barcode number in fourteen digits, or the number of its record. */
export type FdcKey =
  | { readonly by: 'gtin'; readonly gtin14: string }
  | { readonly by: 'record'; readonly fdcId: number };

const PARTS = { food: 0, allergen: 2, token: 4 } as const;
const RECORD_PARTS = { version: 6, measure: 7 } as const;

/**
 * The id of a food of FoodData Central or of a part of it, the same on every machine: shaped as a UUID of
 * version 7 (RFC 9562 5.7) whose time is the opening of the database; `rand_a` holds the kind of part and its
 * index (0 to 255), the last fourteen digits are the barcode number or the record's number.
 * `fdcPartId('food', { by: 'record', fdcId: 7 }, 0)` → `'0169d632-1400-7000-8000-000000000007'`.
 */
export function fdcPartId(part: keyof typeof PARTS, key: FdcKey, index: number): string {
  const kind = PARTS[part] + (key.by === 'gtin' ? 1 : 0);
  return idOf(kind, index, key.by === 'gtin' ? key.gtin14 : String(key.fdcId).padStart(14, '0'));
}

/** The id of a record's reading or of one of its measures; of two readings of a food the later record's is larger. */
export function fdcRecordId(part: keyof typeof RECORD_PARTS, fdcId: number, index: number): string {
  return idOf(RECORD_PARTS[part], index, String(fdcId).padStart(14, '0'));
}

function idOf(kind: number, index: number, digits: string): string {
  if (!/^\d{14}$/.test(digits)) throw new Error(`A number of fourteen digits, got "${digits}"`);
  if (!Number.isInteger(index) || index < 0 || index > 255) {
    throw new Error(`Index ${index} of a part of ${digits} is not in 0..255`);
  }
  const time = OPENED_MS.toString(16).padStart(12, '0');
  const part = `7${kind}${index.toString(16).padStart(2, '0')}`;
  return `${time.slice(0, 8)}-${time.slice(8)}-${part}-80${digits.slice(0, 2)}-${digits.slice(2)}`;
}
