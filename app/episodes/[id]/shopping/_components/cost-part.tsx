import Link from 'next/link';
import type { Cost, ShoppingList } from '#lib/shopping/shopping-list';
import { costText } from '#lib/shopping/shopping-text';

/** What all of it costs, and a portion of each dish, with bounds where prices are old. */
export function CostPart({ list }: { readonly list: ShoppingList }) {
  const costs = [...(list.cost ? [list.cost] : []), ...list.otherCosts];
  if (costs.length === 0) {
    return (
      <div className="mt-4 print:hidden">
        <p className="text-soft">No cost yet: no pack with a price is known.</p>
        <Unpriced list={list} />
      </div>
    );
  }
  return (
    <section aria-labelledby="cost" className="mt-8 print:mt-1">
      <h2 id="cost" className="print:hidden">
        Cost
      </h2>
      {costs.map((cost) => (
        <p key={cost.currency} className="print:text-[9pt]">
          <b>{costText(cost)}</b>
          {cost.atLeast
            ? ', since something here has no price yet.'
            : ' for everything to buy, at the last prices seen.'}
        </p>
      ))}
      <Unpriced list={list} />
      {list.dishes.length > 0 && (
        <div className="print:hidden">
          <p className="mt-2 max-w-[60ch] text-soft">
            What the ingredients of each dish cost once made, by the grams they take of a pack:
          </p>
          <ul>
            {list.dishes.map(({ segmentId, segment, cost, portions, each }) => (
              <li key={segmentId} className="border-b border-line py-1">
                {segment}: <Sum cost={cost} />
                {each && (
                  <>
                    , a portion of {portions}: <Sum cost={each} />
                  </>
                )}
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

/** Foods without a price, each with the way to where its packs and prices are kept. */
function Unpriced({ list }: { readonly list: ShoppingList }) {
  if (list.unpriced.length === 0) return null;
  return (
    <section aria-labelledby="no-price" className="mt-3 print:hidden">
      <h3 id="no-price">No price yet</h3>
      <p className="mt-1 max-w-[60ch] text-soft">
        Prices are kept with each food’s packs, in the pantry. A dish has a cost once all of its
        foods have one.
      </p>
      <ul className="mt-1 flex flex-wrap gap-x-5">
        {list.unpriced.map(({ foodId, name }) => (
          <li key={foodId}>
            <Link
              className="link inline-flex min-h-8 items-center"
              href={`/pantry/foods/${encodeURIComponent(foodId)}#packs`}
            >
              <span className="unseen">Enter a price of </span>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The oldest price is said once, with the sum of all. */
const Sum = ({ cost }: { readonly cost: Cost }) => (
  <b className="font-semibold">{costText(cost.atLeast ? { ...cost, high: cost.low } : cost)}</b>
);
