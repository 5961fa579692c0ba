import 'server-only';
import { readKitchen } from '#lib/store/read-kitchen';
import { localDate } from '#lib/units/local-date';

/** The date in the person's kitchen at an instant. */
export async function dateIn(at: Date): Promise<string> {
  const stored = await readKitchen();
  return localDate(at, stored?.kitchen.zone ?? 'UTC');
}
