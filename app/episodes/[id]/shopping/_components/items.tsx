import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { NeedRow, ShoppingItem } from '#lib/shopping/shopping-list';
import { amountWords, timesWords } from '#lib/shopping/list-words';
import { buyText, priceText } from '#lib/shopping/shopping-text';

/** Foods to buy or in stock: need, stock, what to buy, and how the need comes about. */
export function Items({
  caption,
  items,
}: {
  readonly caption: string;
  readonly items: readonly ShoppingItem[];
}) {
  const head = (
    <>
      <Th>food</Th>
      <Th number>need</Th>
      <Th number>in stock</Th>
      <Th number>to buy</Th>
      <Th>packs</Th>
    </>
  );
  return (
    <Table caption={caption} head={head}>
      {items.map((item) => (
        <Tr key={item.foodId} open={item.open.length > 0}>
          <RowHead>
            <span aria-hidden="true" className="mr-2 hidden print:inline">
              ☐
            </span>
            {item.name}
            <Notes item={item} />
            <Working item={item} />
          </RowHead>
          <Td number>{amountWords(item.needMg, item.needMl) ?? 'open'}</Td>
          <Td number>{item.stockMg > 0 ? amountWords(item.stockMg, null) : '–'}</Td>
          <Td number>
            <b>{toBuy(item)}</b>
          </Td>
          <Td>
            {item.packs ? buyText(item) : '–'}
            {item.packs?.minor != null && item.packs.currency !== null && (
              <span className="block text-fine text-soft print:inline print:text-[9pt]">
                {' '}
                {priceText(item.packs.minor, item.packs.currency)}
              </span>
            )}
          </Td>
        </Tr>
      ))}
    </Table>
  );
}

/** The amount alone; packs have a column of their own. */
function toBuy(item: ShoppingItem): string {
  return buyText({ ...item, packs: null });
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
    <details className="print:hidden">
      <summary className="link inline-flex min-h-8 items-center text-fine text-soft">
        how it adds up<span className="unseen"> for {item.name}</span>
      </summary>
      <ul className="pb-2 text-fine">
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
