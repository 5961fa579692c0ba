import { ButtonForm } from '../../_forms/button-form';
import type { Pack } from '#lib/episode/stock-schema';
import { latestPrices, priceWords } from '#lib/shopping/price-words';
import { priceText } from '#lib/shopping/shopping-text';
import type { StoredFood } from '#lib/store/read-foods';
import type { StoredPrice } from '#lib/store/read-prices';
import { printGrams } from '#lib/units/print';
import { removePack, removePrice } from '../pack-actions';
import { FoodSection } from './food-section';
import { PackForm, PriceForm } from './pack-forms';

interface Props {
  readonly stored: StoredFood;
  /** The prices of its packs, the last seen first. */
  readonly prices?: readonly StoredPrice[];
  /** Names of shops that are known. */
  readonly shops?: readonly string[];
  /** Of the price that was typed last. */
  readonly currency?: string;
}

/** The packs of a food with their prices: by shop, with the day on which each was seen. */
export function PacksPart({ stored, prices = [], shops = [], currency = '' }: Props) {
  const { food, packs, revs } = stored;
  const of = (pack: Pack) => prices.filter(({ packId }) => packId === pack.id);
  return (
    <FoodSection id="packs" title="Packs and prices">
      <ul className="mb-3">
        {packs.map((pack) => (
          <li key={pack.id} className="border-b border-line py-1.5">
            <b className="font-semibold">{packWords(pack)}</b>
            <Prices prices={of(pack)} />
            <details className="print:hidden">
              <summary className="link min-h-11 content-center">
                Note a price, or take out<span className="unseen"> of {pack.name}</span>
              </summary>
              <div className="grid gap-4 pt-1 pb-3">
                <PriceForm packId={pack.id} shops={shops} currency={currency} />
                <TakeOut pack={pack} rev={revs[pack.id] ?? 0} prices={of(pack)} />
              </div>
            </details>
          </li>
        ))}
        {packs.length === 0 && (
          <li className="text-soft">No pack is known: the shopping list counts in grams.</li>
        )}
      </ul>
      <details open={packs.length === 0} className="print:hidden">
        <summary className="link min-h-11 content-center">Add a pack</summary>
        <div className="pt-1">
          <PackForm foodId={food.id} foodName={food.name} shops={shops} currency={currency} />
        </div>
      </details>
    </FoodSection>
  );
}

function packWords(pack: Pack): string {
  const { name, netMg, netMl, drainedMg, stepMg, gtin } = pack;
  const loose = stepMg !== null;
  const sizes = [
    netMg !== null && !loose && `${printGrams(netMg)} g`,
    netMl !== null && `${netMl} ml`,
  ].filter((size) => size !== false && !name.includes(size));
  const parts = [
    name,
    ...sizes,
    drainedMg !== null && `${printGrams(drainedMg)} g drained`,
    loose && `loose, in steps of ${printGrams(stepMg)} g`,
    loose && netMg !== null && `priced for ${printGrams(netMg)} g`,
    gtin !== null && `number ${gtin}`,
  ];
  return parts.filter(Boolean).join(', ');
}

interface PricesProps {
  readonly prices: readonly StoredPrice[];
}

/** The prices that count; those seen before them are folded away. */
function Prices({ prices }: PricesProps) {
  const { latest, earlier } = latestPrices(prices);
  if (latest.length === 0) return <p className="text-soft">No price is known.</p>;
  return (
    <>
      <PriceList prices={latest} />
      {earlier.length > 0 && (
        <details>
          <summary className="link min-h-11 content-center">Earlier prices</summary>
          <PriceList prices={earlier} />
        </details>
      )}
    </>
  );
}

function PriceList({ prices }: PricesProps) {
  return (
    <ul>
      {prices.map(({ id, price, shopName }) => (
        <li key={id}>{priceWords(price, shopName)}</li>
      ))}
    </ul>
  );
}

function TakeOut({
  pack,
  rev,
  prices,
}: PricesProps & { readonly pack: Pack; readonly rev: number }) {
  const { foodId } = pack;
  return (
    <div className="flex flex-wrap gap-3">
      {prices.map(({ id, rev: priceRev, price, shopName }) => (
        <ButtonForm
          key={id}
          action={removePrice}
          values={{ foodId, partId: id, rev: priceRev }}
          tone="hand"
          size="usual"
          label={`Take out the price of ${pack.name}, ${priceWords(price, shopName)}`}
        >
          Take out {priceText(price.minor, price.currency)}
        </ButtonForm>
      ))}
      <ButtonForm
        action={removePack}
        values={{ foodId, partId: pack.id, rev }}
        tone="hand"
        size="usual"
        label={`Take out the pack ${pack.name}`}
      >
        Take out the pack
      </ButtonForm>
    </div>
  );
}
