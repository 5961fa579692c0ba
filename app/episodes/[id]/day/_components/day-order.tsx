import { clockText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';
import { placeWords } from '#lib/shoot/step-words';
import { shotsOf, type DayPage } from './view';

/** The edge of a row: red and wide for the hands, teal and double for what runs by itself. */
const EDGE = {
  hand: 'border-l-[6px] border-hand',
  self: 'border-l-[6px] border-double border-self',
  pause: 'border-l-[6px] border-dotted border-edge',
} as const;

/** The element of an entry that links lead to. */
export function entryId(entry: PlanEntry): string {
  return `entry-${entry.id.replaceAll(':', '-')}`;
}

/** Everything to do, in the order of doing it. On paper this is the day sheet: rows stay whole, heads repeat. */
export function DayOrder({ page }: { readonly page: DayPage }) {
  return (
    <table className="w-full border-collapse print:text-[9pt] print:leading-[1.15]">
      <caption className="unseen">The shooting order, in the order of doing</caption>
      <thead>
        <tr className="border-b-[1.5px] border-ink">
          {['time', 'what to do', 'with'].map((name, index) => (
            <th
              key={name}
              scope="col"
              className={`lettering py-1.5 pr-3 text-left align-bottom text-fine text-soft print:py-0 ${index === 2 ? 'max-md:hidden print:table-cell' : ''}`}
            >
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {page.plan.entries.map((entry) => (
          <Entry key={entry.id} page={page} entry={entry} />
        ))}
      </tbody>
    </table>
  );
}

function Entry({ page, entry }: { readonly page: DayPage; readonly entry: PlanEntry }) {
  const { episode, kitchen } = page.file;
  const segment = episode.segments.find(({ id }) => id === entry.segmentId);
  const place = placeWords(entry, kitchen.ovens, episode.region);
  const tone = entry.kind === 'step' || entry.kind === 'appointment' ? handOrSelf(entry) : 'pause';
  return (
    <tr id={entryId(entry)} className="border-b border-line target:bg-sunk">
      <td className="w-24 py-3 pr-3 align-top whitespace-nowrap print:w-auto print:py-[1.5pt]">
        <b className="text-lead print:text-[9pt]">{clockText(entry.startMin)}</b>
        <span className="block text-fine text-soft print:inline print:text-[9pt]">
          <span className="hidden print:inline">–</span>
          <span className="print:hidden">to </span>
          {clockText(entry.endMin)}
        </span>
      </td>
      <td className={`py-3 pr-3 pl-3 align-top print:py-[1.5pt] ${EDGE[tone]}`}>
        <b className="text-lead font-semibold print:text-[9pt]">{entry.title}</b>
        <Details page={page} entry={entry} segment={segment?.title ?? null} />
        <span className="block text-fine text-soft md:hidden print:hidden">{place}</span>
        <details className="print:hidden">
          <summary className="link inline-flex min-h-14 items-center text-base text-soft md:min-h-8 md:text-fine">
            why then?<span className="unseen"> {entry.title}</span>
          </summary>
          <p className="pb-2 text-base">{entry.why}</p>
        </details>
      </td>
      <td className="py-3 align-top max-md:hidden print:table-cell print:py-[1.5pt]">{place}</td>
    </tr>
  );
}

function Details({
  page,
  entry,
  segment,
}: {
  readonly page: DayPage;
  readonly entry: PlanEntry;
  readonly segment: string | null;
}) {
  const shots = shotsOf(page.file.episode.segments, entry);
  return (
    <>
      {segment !== null && entry.kind === 'step' && (
        <span className="text-fine text-soft print:text-[9pt]"> · {segment}</span>
      )}
      {shots.length > 0 && (
        <span className="block text-base print:inline print:text-[9pt]">
          <span className="hidden print:inline"> · </span>
          {shots.length === 1 ? 'Shot: ' : 'Shots: '}
          {shots.map((shot) => [shot.title, shot.framing].filter(Boolean).join(', ')).join('; ')}
        </span>
      )}
    </>
  );
}

function handOrSelf(entry: PlanEntry): 'hand' | 'self' {
  return entry.hands ? 'hand' : 'self';
}
