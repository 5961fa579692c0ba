import 'server-only';
import { database } from '#lib/store/client';
import { ALIVE } from '#lib/store/load';

/** What an imported product has beside its values, in its reading in use. */
export interface Product {
  readonly brand: string | null;
  /** As typed in the source, right or wrong. */
  readonly gtin: string | null;
  /** The ingredient list as printed. */
  readonly ingredients: string | null;
}

/** What is known of a food as a product; null for one that is none, or was not imported. */
export async function readProduct(foodId: string): Promise<Product | null> {
  const product = await database().foodVersion.findFirst({
    where: { foodId, ...ALIVE },
    orderBy: [{ seq: 'desc' }, { id: 'desc' }],
    select: { brand: true, gtin: true, ingredients: true },
  });
  return product && Object.values(product).some((text) => text !== null) ? product : null;
}
