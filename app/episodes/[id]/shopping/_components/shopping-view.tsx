import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import type { ReadLabel } from '#lib/shopping/labels-to-look-at';
import type { Shelves } from '#lib/shopping/shelf-rows';
import type { ShoppingList } from '#lib/shopping/shopping-list';
import { costText } from '#lib/shopping/shopping-text';
import { printDay } from '#lib/units/print-date';
import type { ListNews } from '../_log/list-log';
import { listQuery, type AskedList } from '../scope';
import { CostPart } from './cost-part';
import { LiveList } from './live-list';
import { SameLabels } from './same-labels';
import { SpanPart } from './span-part';

export interface ShoppingPageData {
  readonly episodeId: string;
  readonly asked: AskedList;
  readonly list: ShoppingList;
  readonly shelves: Shelves;
  readonly first: ListNews;
  readonly today: string;
  /** Foods that were put away and whose labels were read before today. */
  readonly labels: readonly ReadLabel[];
}

/** What to buy, by shop and part of the shop, with the working of each amount, and what was bought. */
export function ShoppingView(page: ShoppingPageData) {
  const { episodeId, asked, list, shelves, first, today, labels } = page;
  const { items, unmatched, cost, forDate, toDate } = list;
  const path = `/episodes/${episodeId}/shopping`;
  const query = listQuery(asked);
  const days = [forDate, toDate === forDate ? null : toDate].flatMap((day) => day ?? []);
  const when = days.map(printDay).join(' to ');
  const cells = [
    { name: 'For', value: when === '' ? 'no filming day' : when },
    ...(cost
      ? [
          {
            name: 'Cost',
            value: costText(
              cost.atLeast
                ? { ...cost, high: cost.low }
                : { ...cost, low: cost.minor, high: cost.minor },
            ),
          },
        ]
      : []),
  ];
  const empty = items.length === 0 && unmatched.length === 0;
  const downloads = [
    ['Text file', 'shopping.txt'],
    ['CSV', 'shopping.csv'],
    ['JSON', 'shopping.json'],
  ] as const;
  return (
    <>
      <style>{'@page { margin: 8mm }'}</style>
      <div className="print:hidden">
        <SlateHead kind="Shopping" title={list.episode || 'Several episodes'} cells={cells} />
      </div>
      <h1 className="hidden font-slate text-[14pt] font-semibold print:block">
        Shopping: {list.episode}
        {when && <> for {when}</>}
      </h1>
      <SpanPart path={path} asked={asked} date={forDate} />
      {empty ? (
        <EmptyState
          title="Nothing to buy yet"
          action={
            <ButtonLink href={`/episodes/${episodeId}`} tone="go">
              To the running order
            </ButtonLink>
          }
        >
          {asked.span
            ? 'No episode is filmed on these days, or none has ingredients yet.'
            : 'Add a dish and its ingredients; what they and their spare takes need is listed here, less what is in the pantry.'}
        </EmptyState>
      ) : (
        <div className="print:text-[9pt] print:leading-[1.15]">
          <LiveList
            key={asked.scope}
            {...{ path, query, list, shelves, first, today }}
            scope={asked.scope}
          />
          <SameLabels labels={labels} />
          <Unmatched episodeId={episodeId} unmatched={unmatched} />
          <CostPart list={list} />
          <section aria-labelledby="paper" className="mt-8 print:hidden">
            <h2 id="paper">On paper and as files</h2>
            <div className="mt-2 flex flex-wrap gap-3">
              <PrintButton>Print the list</PrintButton>
              {downloads.map(([words, name]) => (
                <ButtonLink key={name} href={`${path}/${name}${query}`} download>
                  {words}
                </ButtonLink>
              ))}
            </div>
          </section>
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
