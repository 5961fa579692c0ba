import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import type { ShoppingList } from '#lib/shopping/shopping-list';
import { bySection } from '#lib/shopping/list-words';
import { priceText, SECTION_WORDS } from '#lib/shopping/shopping-text';
import { printDay } from '#lib/units/print-date';
import { Items } from './items';

interface Props {
  readonly episodeId: string;
  readonly list: ShoppingList;
}

/** What to buy, by part of the shop, with the working of each amount. */
export function ShoppingView({ episodeId, list }: Props) {
  const { items, unmatched, cost } = list;
  const cells = [
    { name: 'For', value: list.forDate ? printDay(list.forDate) : 'no filming day' },
    ...(cost
      ? [
          {
            name: cost.atLeast ? 'At least' : 'Cost',
            value: priceText(cost.minor, cost.currency),
          },
        ]
      : []),
  ];
  const inStock = items.filter((item) => item.buyMg === 0);
  const empty = items.length === 0 && unmatched.length === 0;
  return (
    <>
      <SlateHead kind="Shopping" title={list.episode} cells={cells} />
      {empty ? (
        <EmptyState
          title="Nothing to buy yet"
          action={
            <ButtonLink href={`/episodes/${episodeId}`} tone="go">
              To the running order
            </ButtonLink>
          }
        >
          Add a dish and its ingredients; what they and their spare takes need is listed here, less
          what is in the pantry.
        </EmptyState>
      ) : (
        <div className="print:text-[9.5pt] print:leading-[1.2]">
          <div className="mb-6 flex flex-wrap justify-end gap-3 print:hidden">
            <PrintButton>Print the list</PrintButton>
            <ButtonLink href={`/episodes/${episodeId}/shopping/shopping.txt`} download>
              Text file
            </ButtonLink>
          </div>
          {bySection(items.filter((item) => item.buyMg !== 0)).map(([section, some]) => (
            <section
              key={section}
              aria-labelledby={`section-${section}`}
              className="mb-8 print:mb-2"
            >
              <h2 id={`section-${section}`} className="print:text-[12pt]">
                {SECTION_WORDS[section]}
              </h2>
              <Items caption={SECTION_WORDS[section]} items={some} />
            </section>
          ))}
          <Unmatched episodeId={episodeId} unmatched={unmatched} />
          {inStock.length > 0 && (
            <section aria-labelledby="in-stock" className="mb-8 print:mb-2">
              <h2 id="in-stock" className="print:text-[12pt]">
                Already in the kitchen
              </h2>
              <Items caption="Already in the kitchen" items={inStock} />
            </section>
          )}
          <Cost cost={cost} />
        </div>
      )}
    </>
  );
}

function Unmatched({
  episodeId,
  unmatched,
}: {
  readonly episodeId: string;
  readonly unmatched: ShoppingList['unmatched'];
}) {
  if (unmatched.length === 0) return null;
  return (
    <section
      aria-labelledby="unmatched"
      className="hatch mb-8 border-y border-line py-3 print:mb-2"
    >
      <h2 id="unmatched" className="print:text-[12pt]">
        No food chosen yet
      </h2>
      <ul className="mt-1">
        {unmatched.map(({ segment, line }) => (
          <li key={`${segment} ${line}`} className="py-1">
            {line} <span className="text-soft">({segment})</span>
          </li>
        ))}
      </ul>
      <p className="mt-2 print:hidden">
        <a className="link" href={`/episodes/${episodeId}`}>
          Choose a food for each in its dish
        </a>
        , and its amount is counted.
      </p>
    </section>
  );
}

function Cost({ cost }: { readonly cost: ShoppingList['cost'] }) {
  if (!cost) {
    return (
      <p className="text-soft print:hidden">
        No cost yet: no pack with a price is known. Prices are kept with a food in the pantry.
      </p>
    );
  }
  return (
    <p>
      {cost.atLeast ? 'At least ' : ''}
      <b>{priceText(cost.minor, cost.currency)}</b>
      {cost.atLeast
        ? ', since something here has no price yet.'
        : ' for everything, at the last prices seen.'}
    </p>
  );
}
