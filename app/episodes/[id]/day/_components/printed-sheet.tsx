import { filmedTogether } from '#lib/episode/also-filmed';
import { clockText, minutesText } from '#lib/shoot/day-words';
import { isTooLong, placeWords } from '#lib/shoot/step-words';
import { printDay } from '#lib/units/print-date';
import { edgeOf, rowFacts } from './row-facts';
import type { DayPage } from './view';

/** So many rows stand on one printed page; a longer day says on each page which of how many it is. */
const ONE_PAGE_ROWS = 40;
const MARGINS = 'margin: 8mm';
const PAGE_NUMBERS =
  '@bottom-right { content: counter(page) " of " counter(pages); font-size: 9pt }';

/**
 * The day on paper: rows stay whole, heads are said again on each page, no text is smaller than 9 pt.
 * Up to 40 rows stand on one A4 page with the lots and cautions.
 */
export function PrintedSheet({ page }: { readonly page: DayPage }) {
  const { file, plan, sheet } = page;
  const { region } = file.episode;
  const { title } = filmedTogether(file).episode;
  const long = sheet.rows.length > ONE_PAGE_ROWS;
  const kind = plan.kind === 'asLived' ? 'as lived' : 'packed';
  return (
    <div className="hidden text-[9pt] leading-[1.12] print:block">
      <style>{`@page { ${long ? PAGE_NUMBERS : MARGINS} }`}</style>
      <h1 className="font-slate text-[15pt] leading-tight font-semibold">{title}</h1>
      <p>
        {printDay(plan.date)}, {kind}, start {clockText(plan.startMin)}, wrap{' '}
        {clockText(plan.wrapMin)}
      </p>
      {plan.broken.map(({ message }) => (
        <p key={message} className="font-bold">
          ! {message}
        </p>
      ))}
      <table className="mt-[2pt] w-full border-collapse">
        <thead>
          <tr className="border-b border-ink text-left">
            <th scope="col">time</th>
            <th scope="col" className="pl-2">
              what to do
            </th>
            <th scope="col">with</th>
          </tr>
        </thead>
        <tbody>
          {sheet.rows.map((row) => (
            <tr key={row.entry.id} className="border-b border-line">
              <td className="py-[1pt] pr-2 align-top whitespace-nowrap">
                <b>{clockText(row.entry.startMin)}</b>–{clockText(row.entry.endMin)}
              </td>
              <td className={`py-[1pt] pr-2 pl-2 align-top ${edgeOf(row)}`}>
                <b>{row.entry.title}</b>
                <span className="font-slate">
                  {[...rowFacts(row, region), ...row.remarks.map((remark) => `! ${remark}`)]
                    .map((fact) => ` · ${fact}`)
                    .join('')}
                </span>
              </td>
              <td className="py-[1pt] align-top whitespace-nowrap">
                {placeWords(row.entry, file.kitchen.ovens, region, row.appliance)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {sheet.lots.map((lot) => (
        <p key={lot.perishableId} className="mt-[2pt]">
          <b>{lot.name}</b> stands out {minutesText(lot.minutes)} of {minutesText(lot.limitMin)} at
          most{isTooLong(lot) ? ': TOO LONG' : ''}
        </p>
      ))}
      <p className="mt-[3pt] font-slate">
        {sheet.cautions.map(({ text }) => text).join(' ')} {sheet.localCode}
      </p>
    </div>
  );
}
