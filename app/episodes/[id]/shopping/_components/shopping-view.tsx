import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import type { ShoppingList } from '#lib/shopping/shopping-list';
import { bySection } from '#lib/shopping/list-words';
import { isInStock, priceText, SECTION_WORDS } from '#lib/shopping/shopping-text';
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
  const inStock = items.filter(isInStock);
  const groups = [
    ...bySection(items.filter((item) => !isInStock(item))).map(([section, some]) => ({
      title: SECTION_WORDS[section],
      items: some,
    })),
    ...(inStock.length > 0 ? [{ title: 'Already in the kitchen', items: inStock }] : []),
  ];
  const empty = items.length === 0 && unmatched.length === 0;
  return (
    <>
      <style>{'@page { margin: 8mm }'}</style>
      <div className="print:hidden">
        <SlateHead kind="Shopping" title={list.episode} cells={cells} />
      </div>
      <h1 className="hidden font-slate text-[14pt] font-semibold print:block">
        Shopping: {list.episode}
        {list.forDate && <> for {printDay(list.forDate)}</>}
      </h1>
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
        <div className="print:text-[9pt] print:leading-[1.15]">
          <div className="mb-6 flex flex-wrap justify-end gap-3 print:hidden">
            <PrintButton>Print the list</PrintButton>
            <ButtonLink href={`/episodes/${episodeId}/shopping/shopping.txt`} download>
              Text file
            </ButtonLink>
          </div>
          <Items groups={groups} />
          <Unmatched episodeId={episodeId} unmatched={unmatched} />
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
      className="hatch my-8 border-y border-line py-3 print:my-2 print:py-1"
    >
      <h2 id="unmatched" className="print:text-[12pt]">
        No food chosen yet
      </h2>
      <ul className="mt-1">
        {unmatched.map(({ segment, line }) => (
          <li key={`${segment} ${line}`} className="py-1 print:py-0">
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
