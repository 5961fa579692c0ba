import { HANDS_COLUMN, type DaySheetRow } from '#lib/shoot/day-sheet';
import { clockText, degreesText } from '#lib/shoot/day-words';
import { placeWords } from '#lib/shoot/step-words';
import { entryElement, toneOf } from './day-columns-of';
import type { DayPage } from './view';

/** The edge of a row: red and wide for the hands, teal and double for what runs by itself. */
const EDGE = {
  hand: 'border-l-[6px] border-hand',
  self: 'border-l-[6px] border-double border-self',
  pause: 'border-l-[6px] border-dotted border-edge',
} as const;

const HEAD = 'lettering py-1.5 text-left align-bottom text-fine text-soft print:py-0';

/** Everything to do, in the order of doing it. On paper this is the day sheet: rows stay whole, heads repeat. */
export function DayOrder({ page }: { readonly page: DayPage }) {
  return (
    <table className="w-full border-collapse print:text-[9pt] print:leading-[1.15]">
      <caption className="unseen">The shooting order, in the order of doing</caption>
      <thead>
        <tr className="border-b-[1.5px] border-ink">
          <th scope="col" className={HEAD}>
            time
          </th>
          <th scope="col" className={`${HEAD} pl-3`}>
            what to do
          </th>
          <th scope="col" className={`${HEAD} max-md:hidden print:table-cell`}>
            with
          </th>
        </tr>
      </thead>
      <tbody>
        {page.sheet.rows.map((row) => (
          <Entry key={row.entry.id} page={page} row={row} />
        ))}
      </tbody>
    </table>
  );
}

function Entry({ page, row }: { readonly page: DayPage; readonly row: DaySheetRow }) {
  const { episode, kitchen } = page.file;
  const { entry } = row;
  const place = placeWords(entry, kitchen.ovens, episode.region);
  const columnId = row.columnIds.includes(HANDS_COLUMN) ? HANDS_COLUMN : '';
  const edge = EDGE[toneOf({ kind: entry.kind, columnId })];
  return (
    <tr id={entryElement(entry.id)} className="border-b border-line target:bg-sunk">
      <td className="w-24 py-3 pr-3 align-top whitespace-nowrap print:w-auto print:py-[1.5pt]">
        <b className="text-lead print:text-[9pt]">{clockText(entry.startMin)}</b>
        <span className="block text-fine text-soft print:inline print:text-[9pt]">
          <span className="hidden print:inline">–</span>
          <span className="print:hidden">to </span>
          {clockText(entry.endMin)}
        </span>
      </td>
      <td className={`py-3 pr-3 pl-3 align-top print:py-[1.5pt] ${edge}`}>
        <b className="text-lead font-semibold print:text-[9pt]">{entry.title}</b>
        {row.segmentTitle !== null && entry.kind === 'step' && (
          <span className="text-fine text-soft print:text-[9pt]"> · {row.segmentTitle}</span>
        )}
        <Facts row={row} page={page} />
        <span className="block text-fine text-soft md:hidden print:hidden">{place}</span>
        <details className="print:hidden">
          <summary className="link min-h-14 content-center text-base text-soft">
            why then?<span className="unseen"> {entry.title}</span>
          </summary>
          <p className="pb-2 text-base">{entry.why}</p>
        </details>
      </td>
      <td className="py-3 align-top max-md:hidden print:table-cell print:py-[1.5pt]">{place}</td>
    </tr>
  );
}

/** What is said beside an entry: inside temperature, shots, note, remarks. On paper they run on in its line. */
function Facts({ page, row }: { readonly page: DayPage; readonly row: DaySheetRow }) {
  const { inside, note, remarks, shots } = row;
  const facts = [
    ...(inside ? [`inside ${degreesText(inside.milliC, page.file.episode.region)}`] : []),
    ...shots.map((shot) => `shot: ${[shot.title, shot.framing].filter(Boolean).join(', ')}`),
    ...(note === '' ? [] : [note]),
  ];
  return (
    <>
      {facts.map((fact) => (
        <span key={fact} className="block text-base print:inline print:text-[9pt]">
          <span className="hidden print:inline"> · </span>
          {fact}
        </span>
      ))}
      {remarks.map((remark) => (
        <b key={remark} className="block text-base text-hand print:inline print:text-[9pt]">
          <span className="hidden print:inline"> · </span>! {remark}
        </b>
      ))}
    </>
  );
}
