import { gtinFault } from '#lib/foods/gtin';
import type { Product } from '#lib/store/read-product';

/** What an imported product says of itself beside its values, and that the pack is the better witness. */
export function ProductFacts({ product }: { readonly product: Product }) {
  const { brand, gtin, ingredients } = product;
  const fault = gtin === null ? null : gtinFault(gtin);
  return (
    <section aria-label="The product" className="mb-6 max-w-prose">
      <dl>
        {brand !== null && <Fact name="Brand">{brand}</Fact>}
        {gtin !== null && (
          <Fact name="Barcode number">
            <span className="break-all">{gtin}</span>
            {fault && <span className="block">{fault}</span>}
          </Fact>
        )}
        {ingredients !== null && (
          <Fact name="Ingredients">
            <span className="break-words">{ingredients}</span>
          </Fact>
        )}
      </dl>
      <p className="mt-2 text-soft">
        As its maker told the database, perhaps years ago. Compare the pack in your hand before you
        rely on it, above all for allergens.
      </p>
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div className="flex flex-wrap gap-x-2">
      <dt className="text-soft">{name}:</dt>
      <dd className="min-w-0">{children}</dd>
    </div>
  );
}
