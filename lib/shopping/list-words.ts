import type { NeedRow } from '#lib/shopping/shopping-list';
import { gramsUp } from '#lib/shopping/shopping-text';
import { printTo } from '#lib/units/print';

/**
 * An amount in a table: `amountWords(794_000, null)` → `'794 g'`; both where some of it is known by volume only;
 * null where nothing is known.
 */
export function amountWords(mg: number | null, ml: number | null): string | null {
  const words = [
    ...(mg === null ? [] : [gramsUp(mg)]),
    ...(ml === null ? [] : [`${printTo(ml, 1)} ml`]),
  ];
  return words.length === 0 ? null : words.join(' + ');
}

/** How often an ingredient is bought: `'once'`, `'2 times'`, `'once and one spare take'`. */
export function timesWords({
  batches,
  spareTakes,
  pickups = 0,
}: Pick<NeedRow, 'batches' | 'spareTakes'> & Partial<Pick<NeedRow, 'pickups'>>): string {
  if (batches === null) return 'how often is open';
  const made = batches === 1 ? 'once' : `${String(Number(batches.toFixed(3)))} times`;
  const more = [
    ...(spareTakes > 0 ? [spareTakes === 1 ? 'one spare take' : `${spareTakes} spare takes`] : []),
    ...(pickups > 0 ? [pickups === 1 ? 'one pickup' : `${pickups} pickups`] : []),
  ];
  return [made, ...more].join(' and ');
}
