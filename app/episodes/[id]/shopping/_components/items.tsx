import { ScrollRegion } from '../../../../_ui/scroll-region';
import type { NeedRow, ShoppingItem } from '#lib/shopping/shopping-list';
import { amountWords, timesWords } from '#lib/shopping/list-words';
import { buyText, needText, priceText } from '#lib/shopping/shopping-text';

/** A part of the shop with what is bought there. */
export interface ItemGroup {
  readonly title: string;
  readonly items: readonly ShoppingItem[];
}

const CELL = 'py-2 pr-3 align-top last:pr-0 print:py-[1.5pt]';
const NUMBER = `${CELL} text-right whitespace-nowrap`;
/** Left out on a phone, where the working says it. */
const WIDE = 'max-md:hidden print:table-cell';
const HEAD = 'lettering pb-1 pr-3 text-fine text-soft last:pr-0 print:pb-0 print:text-[9pt]';

/** Foods by part of the shop: need, stock, what to buy, and how the need comes about. On paper, one table. */
export function Items({ groups }: { readonly groups: readonly ItemGroup[] }) {
  return (
    <ScrollRegion label="Shopping list">
      <table className="w-full border-collapse">
        <caption className="unseen">Shopping list</caption>
        <thead>
          <tr className="border-b-[1.5px] border-ink">
            <th scope="col" className={`${HEAD} text-left`}>
              food
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-right`}>
              need
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-right`}>
              in stock
            </th>
            <th scope="col" className={`${HEAD} text-right`}>
              to buy
            </th>
            <th scope="col" className={`${HEAD} text-left md:pl-8`}>
              packs
            </th>
          </tr>
        </thead>
        {groups.map(({ title, items }) => (
          <tbody key={title}>
            <tr>
              <th
                scope="rowgroup"
                colSpan={5}
                className="pt-5 pb-1 text-left font-slate text-head font-semibold print:pt-[3pt] print:pb-0 print:text-[11pt]"
              >
                {title}
              </th>
            </tr>
            {items.map((item) => (
              <Item key={item.foodId} item={item} />
            ))}
          </tbody>
        ))}
      </table>
    </ScrollRegion>
  );
}

function Item({ item }: { readonly item: ShoppingItem }) {
  return (
    <tr className={`border-b border-line ${item.open.length > 0 ? 'hatch' : ''}`}>
      <th scope="row" className={`${CELL} md:min-w-48 text-left font-normal`}>
        <span aria-hidden="true" className="mr-2 hidden print:inline">
          ☐
        </span>
        <span className="inline-flex flex-wrap items-baseline gap-x-3">
          {item.name}
          <Working item={item} />
        </span>
        <Notes item={item} />
      </th>
      <td className={`${NUMBER} ${WIDE}`}>{amountWords(item.needMg, item.needMl) ?? 'open'}</td>
      <td className={`${NUMBER} ${WIDE}`}>
        {item.stockMg > 0 ? amountWords(item.stockMg, null) : '–'}
      </td>
      <td className={NUMBER}>
        <b>{toBuy(item)}</b>
      </td>
      <td className={`${CELL} md:min-w-40 md:pl-8`}>
        {item.packs.length > 0 ? buyText(item) : '–'}
        {item.minor !== null && item.currency !== null && (
          <span className="block text-fine text-soft print:inline print:text-[9pt]">
            {' '}
            {priceText(item.minor, item.currency)}
          </span>
        )}
      </td>
    </tr>
  );
}

/** The amount alone; packs have a column of their own. */
function toBuy(item: ShoppingItem): string {
  return buyText({ ...item, packs: [] });
}

function Notes({ item }: { readonly item: ShoppingItem }) {
  return (
    <>
      {item.open.map((line) => (
        <span key={line} className="block text-fine font-semibold">
          amount open: {line}
        </span>
      ))}
      {item.notCounted.map((reason) => (
        <span key={reason} className="block text-fine text-soft">
          not counted: {reason}
        </span>
      ))}
    </>
  );
}

function Working({ item }: { readonly item: ShoppingItem }) {
  return (
    <details className="open:basis-full print:hidden">
      <summary className="link inline-flex min-h-6 items-center text-fine text-soft">
        how it adds up<span className="unseen"> for {item.name}</span>
      </summary>
      <ul className="pb-2 text-fine">
        <li>{needText(item) || 'amount open'}</li>
        {item.working.map((row) => (
          <li key={`${row.segmentId} ${row.line}`}>
            {row.segment}: {row.line}, {timesWords(row)}: {rowAmount(row)}
          </li>
        ))}
      </ul>
    </details>
  );
}

function rowAmount(row: NeedRow): string {
  return amountWords(row.mg, row.ml) ?? 'amount open';
}
