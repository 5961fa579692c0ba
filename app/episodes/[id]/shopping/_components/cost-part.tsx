import type { Cost, ShoppingList } from '#lib/shopping/shopping-list';
import { costText } from '#lib/shopping/shopping-text';

/** What all of it costs, and a portion of each dish, with bounds where prices are old. */
export function CostPart({ list }: { readonly list: ShoppingList }) {
  const costs = [...(list.cost ? [list.cost] : []), ...list.otherCosts];
  if (costs.length === 0) {
    return (
      <p className="mt-4 text-soft print:hidden">
        No cost yet: no pack with a price is known. Prices are kept with a food in the pantry.
      </p>
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

/** The oldest price is said once, with the sum of all. */
const Sum = ({ cost }: { readonly cost: Cost }) => (
  <b className="font-semibold">{costText(cost.atLeast ? { ...cost, high: cost.low } : cost)}</b>
);
