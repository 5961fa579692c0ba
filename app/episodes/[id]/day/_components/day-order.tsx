import type { DaySheetRow } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import { placeWords } from '#lib/shoot/step-words';
import { entryElement } from './day-columns-of';
import { edgeOf, rowFacts } from './row-facts';
import { pinHref, type DayPage } from './view';

/** Everything to do, in the order of doing it, each with its shots and the reason for its time. */
export function DayOrder({ page }: { readonly page: DayPage }) {
  return (
    <ol aria-label="In the order of doing" className="border-t-[1.5px] border-ink print:hidden">
      {page.sheet.rows.map((row) => (
        <Entry key={row.entry.id} page={page} row={row} />
      ))}
    </ol>
  );
}

function Entry({ page, row }: { readonly page: DayPage; readonly row: DaySheetRow }) {
  const { episode, kitchen } = page.file;
  const { entry } = row;
  return (
    <li
      id={entryElement(entry.id)}
      className="grid grid-cols-[4.25rem_1fr] border-b border-line py-2 target:bg-sunk md:grid-cols-[4.75rem_1fr_11rem] lg:grid-cols-[4.75rem_1fr_8.5rem]"
    >
      <p>
        <b className="text-lead">{clockText(entry.startMin)}</b>
        <span className="block text-fine text-soft">to {clockText(entry.endMin)}</span>
      </p>
      <div className={`pl-3 ${edgeOf(row)}`}>
        <b className="text-lead font-semibold">{entry.title}</b>
        {row.segmentTitle !== null && entry.kind === 'step' && (
          <span className="text-fine text-soft"> · {row.segmentTitle}</span>
        )}
        {rowFacts(row, episode.region).map((fact) => (
          <span key={fact} className="block">
            {fact}
          </span>
        ))}
        {row.remarks.map((remark) => (
          <b key={remark} className="block text-hand">
            {remark}
          </b>
        ))}
      </div>
      <div className="max-md:col-start-2 max-md:flex max-md:flex-wrap max-md:items-center max-md:gap-x-5 max-md:pl-3 md:pl-4">
        <p className="max-md:text-fine max-md:text-soft">
          {placeWords(entry, kitchen.ovens, episode.region, row.appliance)}
        </p>
        <details className="open:basis-full">
          <summary className="link min-h-14 content-center text-soft md:min-h-8 md:text-fine">
            why then?<span className="unseen"> {entry.title}</span>
          </summary>
          <p className="pb-1">{entry.why}</p>
          {entry.stepId !== null && (
            <a
              className="link text-fine"
              href={pinHref(page, { stepId: entry.stepId, when: 'at', min: entry.startMin })}
            >
              Tie it to a time
              <span className="unseen"> {entry.title}</span>
            </a>
          )}
        </details>
      </div>
    </li>
  );
}
