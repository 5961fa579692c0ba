import { ButtonLink } from '../../../../_ui/button';
import { DayColumns } from '../../../../_ui/day-columns';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import { daylightText } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import { printDay } from '#lib/units/print-date';
import { BrokenRules, Cautions, Lots, SoonAfter } from './day-checks';
import { dayColumnsOf } from './day-columns-of';
import { DayForm } from './day-form';
import { DayOrder } from './day-order';
import { SegmentSteps } from './segment-steps';
import { revOf, type DayPage } from './view';

/** So many rows stand on one printed page; a longer day says which page of how many each is. */
const ONE_PAGE_ROWS = 40;
const PAGE_NUMBERS =
  '@page { @bottom-right { content: counter(page) " of " counter(pages); font-size: 9pt } }';

/** The filming day: what it is, its order by the clock and in words, its checks, and its steps. */
export function DayView({ page }: { readonly page: DayPage }) {
  const { file, day, plan } = page;
  const { id, title, region } = file.episode;
  const here = `/episodes/${id}/day`;
  const cells = [
    { name: 'Film', value: printDay(day.date) },
    { name: 'Start', value: clockText(day.startMin) },
    { name: 'Wrap', value: clockText(plan.wrapMin) },
  ];
  const columns = dayColumnsOf(page.sheet, region);
  return (
    <>
      {plan.entries.length > ONE_PAGE_ROWS && <style>{PAGE_NUMBERS}</style>}
      <SlateHead
        kind={day.kind === 'asLived' ? 'Filming day, as lived' : 'Filming day, packed'}
        title={title}
        cells={cells}
      />
      <BrokenRules page={page} />
      <div className="print:hidden">
        <DayForm
          episodeId={id}
          day={day}
          rev={revOf(page, day.id)}
          segments={file.episode.segments.map((segment) => ({
            id: segment.id,
            title: segment.title,
          }))}
        />
      </div>
      <section aria-labelledby="order" className="mt-10 print:mt-0">
        <div className="mb-4 flex flex-wrap items-center gap-3 print:hidden">
          <div className="mr-auto">
            <h2 id="order">Shooting order</h2>
            <p className="text-fine text-soft">On this day {daylightText(page.sheet.daylight)}.</p>
          </div>
          <PrintButton>Print the day sheet</PrintButton>
          <ButtonLink href={`${here}/day-sheet.ics`} download>
            Calendar file
          </ButtonLink>
          <ButtonLink href={`${here}/day-sheet.txt`} download>
            Text file
          </ButtonLink>
        </div>
        {plan.entries.length === 0 ? (
          <p className="text-soft">
            Nothing to do yet: add steps to a segment below, and they are put in order here.
          </p>
        ) : (
          <>
            <div className="mb-8 print:hidden">
              <DayColumns
                columns={columns}
                startMin={plan.startMin}
                endMin={plan.wrapMin}
                hour={clockText}
              />
            </div>
            <DayOrder page={page} />
          </>
        )}
      </section>
      <SoonAfter page={page} />
      <Lots page={page} />
      <Cautions page={page} />
      <div className="print:hidden">
        {file.episode.segments.map((segment) => (
          <SegmentSteps key={segment.id} page={page} segment={segment} />
        ))}
      </div>
    </>
  );
}
