import Link from 'next/link';
import { ButtonLink } from '../../../../_ui/button';
import { FigureView } from '../../../../_ui/figure-view';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import { allowance } from '#lib/figures/allowance';
import { allowanceWords } from '#lib/figures/allowance-words';
import { breakdownAdvice } from '#lib/figures/breakdown-advice';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { Picture } from '../../_components/picture';
import { rowHref } from '../../_components/view';
import { breakdownHref } from '../href';
import type { FoundBreakdown } from '../read-breakdown';
import { BreakdownTable } from './breakdown-table';
import { MissingPart } from './missing-part';
import { OtherBreakdowns } from './other-breakdowns';

interface Props {
  readonly found: FoundBreakdown;
}

/** One number as it is defended: its range, what the range comes from, and the table behind it. */
export function BreakdownView({ found }: Props) {
  const { file, named, of, places = {} } = found;
  const { episode } = file;
  const held = episode.targets.map(({ nutrient }) => nutrient);
  const figures = episodeFigures(file, [...new Set([...HEADLINE_NUTRIENTS, ...held, of.nutrient])]);
  const numbers = publishedNumbers(file, figures);
  const published = numbers(of.nutrient, named.scope);
  const backHref =
    named.segmentId === null ? `/episodes/${episode.id}` : rowHref(episode.id, named.segmentId);
  return (
    <>
      <SlateHead
        kind="Breakdown"
        title={named.title}
        cells={[
          { name: 'Of', value: named.part },
          { name: 'Number', value: published.label },
        ]}
      >
        <p className="mt-1 text-chalk-soft">
          <Link className="link inline-flex min-h-6 items-center" href={backHref}>
            {episode.title}
          </Link>
        </p>
      </SlateHead>
      <div className="grid gap-x-10 gap-y-8 md:grid-cols-[auto_minmax(0,1fr)] lg:grid-cols-[auto_minmax(0,1fr)_minmax(0,1fr)] print:grid-cols-[11rem_minmax(0,1fr)_minmax(0,1.5fr)] print:gap-x-5 print:text-fine">
        <dl>
          <FigureView figure={of.figure} published={published} size="lead" />
        </dl>
        <section aria-labelledby="range-from">
          <h2 id="range-from" className="text-head print:text-lead">
            What the range comes from
          </h2>
          <p className="mt-1">{breakdownAdvice(of)}</p>
          <MissingPart file={file} missing={of.figure.missing} places={places} />
        </section>
        <section id="allowance" aria-labelledby="allowance-head">
          <h2 id="allowance-head" className="text-head print:text-lead">
            What the law allows a label
          </h2>
          <p>
            {allowanceWords(allowance(file, named.scope, of.nutrient), of.nutrient).map(
              (sentence) => (
                <span key={sentence} className="mt-1 block print:inline">
                  {sentence}{' '}
                </span>
              ),
            )}
          </p>
        </section>
      </div>
      <OtherBreakdowns found={found} />
      <section aria-labelledby="by-ingredient" className="mt-8 print:mt-3">
        <div className="mb-2 flex flex-wrap items-center print:mb-0 justify-between gap-x-6 gap-y-2">
          <h2 id="by-ingredient" className="print:text-lead">
            Ingredient by ingredient
          </h2>
          <div className="flex flex-wrap gap-3">
            <ButtonLink
              href={`${breakdownHref(episode.id, named.scope, of.nutrient)}/table.csv`}
              download
            >
              As CSV
            </ButtonLink>
            <PrintButton>Print</PrintButton>
          </div>
        </div>
        <BreakdownTable of={of} what={`${named.title}, ${named.part}`} places={places} />
        <p className="mt-3 max-w-[75ch] text-fine text-soft print:mt-1 print:max-w-none print:text-[9pt]">
          The range holds as far as the printed digits and the weighing are right. It does not cover
          that this piece of food is not the table’s average one. For information, not dietary or
          medical advice.
        </p>
      </section>
      <section aria-labelledby="picture" className="mt-10 print:mt-4 print:break-inside-avoid">
        <h2 id="picture" className="mb-3 print:mb-1 print:text-lead">
          {named.segmentId === null
            ? 'Which dishes it comes from'
            : 'Which ingredients it comes from'}
        </h2>
        <Picture view={{ file, figures, numbers }} scope={named.scope} />
      </section>
    </>
  );
}
