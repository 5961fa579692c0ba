import type { ReactNode } from 'react';
import { ButtonForm } from '../../../../_forms/button-form';
import { ButtonLink } from '../../../../_ui/button';
import { DayColumns } from '../../../../_ui/day-columns';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import { dayFacts } from '#lib/shoot/day-facts';
import { daylightText } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import { kindWords } from '#lib/shoot/kind-words';
import { printDay } from '#lib/units/print-date';
import { switchKind } from '../actions';
import { Appointments } from './appointments';
import { BrokenRules, Cautions, Lots, SoonAfter } from './day-checks';
import { dayColumnsOf } from './day-columns-of';
import { DayForm } from './day-form';
import { Days } from './days';
import { DayOrder } from './day-order';
import { LikelyDay } from './likely';
import { MovedByHand } from './moved-by-hand';
import { PinOffer } from './pin-offer';
import { PrintedSheet } from './printed-sheet';
import { Proof } from './proof';
import { SegmentSteps } from './segment-steps';
import { UsualShotsOfAll } from './usual-shots';
import { dayHref, dayNamed, revOf, type DayPage } from './view';

/** On a phone everything that is touched is 56 px high; nothing of this is printed. */
const TOUCH =
  'print:hidden max-md:[&_:is(button,select,summary,input:not([type=checkbox],[type=radio]),a)]:min-h-14 max-md:[&_label:has(input)]:min-h-14 max-md:[&_a:not(.block)]:inline-flex max-md:[&_a:not(.block)]:items-center';

/** The columns beside the order; on a phone, where they scroll sideways, folded away until asked for. */
function ByTheClock({ children }: { readonly children: ReactNode }) {
  return (
    <div className="min-w-0">
      <details className="peer md:hidden">
        <summary className="link content-center">The day by the clock</summary>
      </details>
      <div className="max-md:not-peer-open:hidden">{children}</div>
    </div>
  );
}

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
  const other = day.kind === 'packed' ? 'asLived' : 'packed';
  return (
    <>
      <PrintedSheet page={page} />
      <div className={TOUCH}>
        <SlateHead
          kind={day.kind === 'asLived' ? 'Filming day, as lived' : 'Filming day, packed'}
          title={title}
          cells={cells}
        />
        <BrokenRules page={page} />
        <div className="mb-2 flex flex-wrap items-center gap-x-4 gap-y-2">
          <span>{kindWords(dayFacts(file))}</span>
          <ButtonForm
            action={switchKind}
            values={{
              episodeId: id,
              dayId: day.id,
              rev: revOf(page, day.id),
              kind: other,
            }}
            tone="plain"
            size="usual"
          >
            {other === 'packed' ? 'Pack it instead' : 'As lived instead'}
          </ButtonForm>
        </div>
        <DayForm
          episodeId={id}
          day={day}
          rev={revOf(page, day.id)}
          segments={file.episode.segments.map((segment) => ({
            id: segment.id,
            title: segment.title,
          }))}
        />
        <Days page={page} />
        <Appointments page={page} />
        <section aria-labelledby="order" className="mt-10">
          <div className="mb-4 flex flex-wrap items-center gap-3">
            <div className="mr-auto">
              <h2 id="order">Shooting order</h2>
              <p className="text-fine text-soft">
                On this day {daylightText(page.sheet.daylight)}.
              </p>
            </div>
            <ButtonLink href={dayHref(page, '/live')} tone="go">
              On the day
            </ButtonLink>
            <ButtonLink href={`/episodes/${page.file.episode.id}/reading`}>
              Read to camera
            </ButtonLink>
            <ButtonLink href={dayHref(page, '/evening')}>The evening before</ButtonLink>
            <ButtonLink href={dayHref(page, '/after')}>After the day</ButtonLink>
            <PrintButton>Print the day sheet</PrintButton>
            <ButtonLink href={dayHref(page, '/day-sheet.ics')} download>
              Calendar file
            </ButtonLink>
            <ButtonLink href={dayHref(page, '/day-sheet.txt')} download>
              Text file
            </ButtonLink>
            <ButtonLink href={dayHref(page, '/day-sheet.csv')} download>
              Table
            </ButtonLink>
          </div>
          <Proof page={page} />
          <PinOffer page={page} />
          {plan.entries.length === 0 ? (
            <p className="text-soft">
              Nothing to do yet: add steps to a segment below, and they are put in order here.
            </p>
          ) : (
            <div className="grid gap-x-10 gap-y-6 lg:grid-cols-[minmax(0,36rem)_minmax(0,1fr)]">
              <ByTheClock>
                <MovedByHand href={here} dayId={dayNamed(page)}>
                  <DayColumns
                    columns={columns}
                    startMin={plan.startMin}
                    endMin={plan.wrapMin}
                    hour={clockText}
                  />
                </MovedByHand>
              </ByTheClock>
              <DayOrder page={page} />
            </div>
          )}
        </section>
        <LikelyDay page={page} />
        <SoonAfter page={page} />
        <Lots page={page} />
        <Cautions page={page} />
        <section aria-labelledby="parts" className="mt-12">
          <h2 id="parts">Steps and shots</h2>
          <p className="mt-1 text-soft">What the order above is made of, segment by segment.</p>
          <UsualShotsOfAll page={page} />
          {file.episode.segments.map((segment) => (
            <SegmentSteps key={segment.id} page={page} segment={segment} />
          ))}
        </section>
      </div>
    </>
  );
}
