import { Fragment, type ReactNode } from 'react';
import { ScrollRegion } from '../../../../_ui/scroll-region';
import type { ShelfUnits } from '#lib/episode/stock-schema';
import { leftoverText } from '#lib/shopping/leftover-text';
import type { NeedRow, ShoppingItem } from '#lib/shopping/shopping-list';
import { amountWords, timesWords } from '#lib/shopping/list-words';
import { shelfAmount } from '#lib/shopping/shelf-amount';
import { buyText, needText, priceText } from '#lib/shopping/shopping-text';

/** A part of the shop with what is bought there. */
export interface ItemGroup {
  readonly title: string;
  readonly items: readonly ShoppingItem[];
}

/** What a page puts beside a food: its tick, and what can be said of it. */
export interface ItemParts {
  readonly tick: ReactNode;
  /** Words and buttons under its name. */
  readonly under: ReactNode;
  /** Under its row, as wide as the list. */
  readonly below: ReactNode;
  /** It needs nobody any more. */
  readonly done: boolean;
}

interface Props {
  readonly groups: readonly ItemGroup[];
  readonly units: ShelfUnits;
  /** Null for what is not bought. */
  readonly partsOf: (item: ShoppingItem) => ItemParts | null;
}

const CELL = 'py-2 pr-3 align-top last:pr-0 print:py-[1pt]';
const NUMBER = `${CELL} text-right whitespace-nowrap`;
/** Left out on a phone, where it stands under the food's name. */
const WIDE = 'max-md:hidden print:table-cell';
const HEAD = 'lettering pb-1 pr-3 text-fine text-soft last:pr-0 print:pb-0 print:text-[9pt]';

/** Foods by part of the shop: tick, need, stock, what to buy, and how the need comes about. On paper, one table. */
export function Items({ groups, units, partsOf }: Props) {
  return (
    <ScrollRegion label="Shopping list">
      <table className="w-full border-collapse">
        <caption className="unseen">Shopping list</caption>
        <thead className="max-md:sr-only print:not-sr-only print:table-header-group">
          <tr className="border-b-[1.5px] border-ink">
            <th scope="col" className={`${HEAD} text-left`}>
              <span className="unseen">taken</span>
            </th>
            <th scope="col" className={`${HEAD} text-left`}>
              food
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-right`}>
              need
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-right`}>
              in stock
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-right`}>
              to buy
            </th>
            <th scope="col" className={`${HEAD} ${WIDE} text-left md:pl-8`}>
              packs
            </th>
          </tr>
        </thead>
        {groups.map(({ title, items }) => (
          <tbody key={title}>
            <tr>
              <th
                scope="rowgroup"
                colSpan={6}
                className="pt-5 pb-1 text-left font-slate text-head font-semibold print:pt-[3pt] print:pb-0 print:text-[11pt] print:leading-none"
              >
                {title}
              </th>
            </tr>
            {items.map((item) => (
              <Item key={item.foodId} item={item} units={units} parts={partsOf(item)} />
            ))}
          </tbody>
        ))}
      </table>
    </ScrollRegion>
  );
}

interface ItemProps {
  readonly item: ShoppingItem;
  readonly units: ShelfUnits;
  readonly parts: ItemParts | null;
}

function Item({ item, units, parts }: ItemProps) {
  const done = parts?.done === true;
  const open = item.open.length > 0 && !done;
  return (
    <Fragment>
      <tr className={`break-inside-avoid border-b border-line ${open ? 'hatch' : ''}`}>
        <td className="w-14 py-1 pr-3 align-top print:w-4 print:py-[1pt]">
          {parts && (
            <>
              {parts.tick}
              <span aria-hidden="true" className="hidden print:inline">
                {done ? '☑' : '☐'}
              </span>
            </>
          )}
        </td>
        <th scope="row" className={`${CELL} text-left font-normal md:min-w-48`}>
          <span className={done ? 'text-soft line-through print:no-underline' : ''}>
            {item.name}
          </span>
          <span className="block text-lead md:hidden print:hidden">
            <b className="font-semibold">{buyText(item, units)}</b> <Price item={item} />
          </span>
          <Notes item={item} />
          <div className="mt-1 flex flex-wrap items-center gap-x-5 gap-y-1 print:hidden">
            {parts?.under}
            <Working item={item} units={units} />
          </div>
        </th>
        <td className={`${NUMBER} ${WIDE}`}>
          {shelfWords(item.needMg, item.needMl, units) ?? 'open'}
        </td>
        <td className={`${NUMBER} ${WIDE}`}>
          {item.stockMg > 0 ? shelfWords(item.stockMg, null, units) : '–'}
        </td>
        <td className={`${NUMBER} ${WIDE}`}>
          <b>{buyText({ ...item, packs: [] }, units)}</b>
        </td>
        <td className={`${CELL} ${WIDE} md:min-w-40 md:pl-8`}>
          {item.packs.length > 0 ? buyText(item, units) : '–'} <Price item={item} />
        </td>
      </tr>
      {parts?.below && (
        <tr className="print:hidden">
          <td colSpan={6} className="border-b border-line pb-4">
            {parts.below}
          </td>
        </tr>
      )}
    </Fragment>
  );
}

function Price({ item }: { readonly item: ShoppingItem }) {
  if (item.minor === null || item.currency === null) return null;
  return (
    <span className="text-fine whitespace-nowrap text-soft md:block print:inline print:text-[9pt] print:leading-none">
      {priceText(item.minor, item.currency)}
    </span>
  );
}

function shelfWords(mg: number | null, ml: number | null, units: ShelfUnits): string | null {
  if (units === 'metric' || mg === null) return amountWords(mg, ml);
  const rest = amountWords(null, ml);
  return rest === null ? shelfAmount(mg, units) : `${shelfAmount(mg, units)} + ${rest}`;
}

function Notes({ item }: { readonly item: ShoppingItem }) {
  return (
    <>
      {item.notes.map((note) => (
        <span key={note} className="block font-semibold">
          {note}
        </span>
      ))}
      {item.open.map((line) => (
        <span
          key={line}
          className="block text-fine font-semibold print:text-[9pt] print:leading-[1.15]"
        >
          amount open: {line}
        </span>
      ))}
      {item.asks.map((asked) => (
        <span key={asked} className="block text-fine font-semibold print:hidden">
          {asked}
        </span>
      ))}
      {item.notCounted.map((reason) => (
        <span
          key={reason}
          className="block text-fine text-soft print:text-[9pt] print:leading-[1.15]"
        >
          not counted: {reason}
        </span>
      ))}
    </>
  );
}

function Working({ item, units }: Omit<ItemProps, 'parts'>) {
  const left = leftoverText(item, units);
  return (
    <details className="open:basis-full">
      <summary className="link inline-flex min-h-11 items-center text-fine text-soft">
        how it adds up<span className="unseen"> for {item.name}</span>
      </summary>
      <ul className="pb-2 text-fine">
        <li>{needText(item, units) || 'amount open'}</li>
        {item.working.map((row) => (
          <li key={`${row.segmentId} ${row.line}`}>
            {row.segment}: {row.line}, {timesWords(row)}: {rowAmount(row)}
            {row.onTop ? `, with ${row.onTop} that is bought and not used` : ''}
          </li>
        ))}
        {item.why && <li>{item.why}</li>}
        {left.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  );
}

function rowAmount(row: NeedRow): string {
  return amountWords(row.mg, row.ml) ?? 'amount open';
}
