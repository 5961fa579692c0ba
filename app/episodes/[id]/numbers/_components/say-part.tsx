import Link from 'next/link';
import { Fragment } from 'react';
import { CopyButton } from '../../../../_ui/copy-button';
import { Disclosure } from '../../../../_ui/disclosure';
import { SayLine } from '../../../../_ui/say-line';
import type { Dish } from '#lib/episode/context';
import type { DishFigures } from '#lib/figures/episode-figures';
import { ENERGY_STEPS, type EnergyStep } from '#lib/episode/schema';
import {
  confirmedOnly,
  publishedNumbers,
  type NumberScope,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import {
  sayDay,
  sayLine,
  sayLines,
  type KeyedLine,
  type SayLine as Line,
} from '#lib/figures/say-line';
import { NUTRIENTS } from '#lib/foods/nutrients';
import type { EpisodeView } from '../../_components/view';
import { breakdownHref } from '../../breakdown/href';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures;
  /** What calories are said to, where the person chose. */
  readonly energyStep: EnergyStep | undefined;
}

/** The line to say of a dish, how closely it is said, and the other lines that could be said of it. */
export function SayPart({ view, dish, figures, energyStep }: Props) {
  const numbers = spokenNumbers(view);
  const options = { energyStep };
  const { portions } = dish.recipe;
  const first = portions.find((portion) => portion.kind === 'count') ?? null;
  const line = sayLine(figures, first, view.figures, numbers, options);
  const others = sayLines(figures, portions, view.figures, numbers, options).filter(
    ({ line: other }) => other.ready && !(line.ready && other.text === line.text),
  );
  const section = `say-${dish.id}-part`;
  if (!line.ready) {
    return (
      <section aria-label={`To say: ${dish.title}`} className="mt-8">
        <h3>Line to say</h3>
        <p className="mt-1 text-soft">Not yet: {line.why}.</p>
      </section>
    );
  }
  return (
    <section id={section} aria-label={`To say: ${dish.title}`} className="mt-8">
      <SayLine id={`say-${dish.id}`} text={line.text} />
      <Notes line={line} />
      <ToBreakdown
        episodeId={view.file.episode.id}
        scope={
          first ? { kind: 'portion', portionId: first.id } : { kind: 'whole', segmentId: dish.id }
        }
      />
      <Steps page={`/episodes/${view.file.episode.id}/numbers`} at={section} chosen={energyStep} />
      {others.length > 0 && (
        <Disclosure words="Other lines to say">
          <OtherLines lines={others} />
        </Disclosure>
      )}
    </section>
  );
}

function Notes({ line }: { readonly line: Line }) {
  if (!line.ready) return null;
  return (
    <>
      {line.halved && <p className="mt-2">{line.halved}</p>}
      {line.remark && <p className="mt-2 text-fine">{line.remark}</p>}
    </>
  );
}

/** The way from the line to what its numbers come from. */
function ToBreakdown({
  episodeId,
  scope,
}: {
  readonly episodeId: string;
  readonly scope: NumberScope;
}) {
  return (
    <p className="mt-2 text-fine print:hidden">
      Breakdown of its{' '}
      {(['energyKcal', 'protein'] as const).map((nutrient, at) => (
        <Fragment key={nutrient}>
          {at > 0 && ' and '}
          <Link
            className="link inline-flex min-h-6 items-center"
            href={breakdownHref(episodeId, scope, nutrient)}
            prefetch={false}
          >
            {NUTRIENTS[nutrient].label}
          </Link>
        </Fragment>
      ))}
    </p>
  );
}

/** How closely calories are said: as their likely range supports, or as the person wants. */
interface StepsProps {
  /** Address of the page. */
  readonly page: string;
  readonly at: string;
  readonly chosen: EnergyStep | undefined;
}

function Steps({ page, at, chosen }: StepsProps) {
  const choices = [
    { href: `${page}#${at}`, words: 'as their range supports', current: chosen === undefined },
    ...ENERGY_STEPS.map((step) => ({
      href: `${page}?step=${step}#${at}`,
      words: step === 1 ? 'to 1 kcal' : `to ${step}`,
      current: chosen === step,
    })),
  ];
  return (
    <p className="mt-3 flex flex-wrap gap-x-4 text-fine print:hidden">
      <span className="content-center text-soft">Calories said</span>
      {choices.map(({ href, words, current }) => (
        <Link
          key={words}
          className={`inline-flex min-h-8 items-center ${current ? 'font-bold' : 'link'}`}
          href={href}
          scroll={false}
          aria-current={current ? 'true' : undefined}
        >
          {words}
        </Link>
      ))}
    </p>
  );
}

function OtherLines({ lines }: { readonly lines: readonly KeyedLine[] }) {
  return (
    <ul className="grid max-w-3xl gap-3">
      {lines.map(
        ({ key, line }) =>
          line.ready && (
            <li key={key} className="flex flex-wrap items-center justify-between gap-x-6 gap-y-1">
              <span className="min-w-0">
                <span id={`line-${key}`}>{line.text}</span>
                <Notes line={line} />
              </span>
              <CopyButton text={line.text} label="Copy" shownIn={`line-${key}`} tone="plain" />
            </li>
          ),
      )}
    </ul>
  );
}

interface DayProps {
  readonly view: EpisodeView;
  readonly energyStep: EnergyStep | undefined;
}

/** The line to say of all dishes together; nothing while a number in it is open. */
export function SayDayPart({ view, energyStep }: DayProps) {
  const line = sayDay(view.figures, spokenNumbers(view), { energyStep });
  if (!line.ready) return null;
  return (
    <section aria-label="To say: all dishes">
      <SayLine id="say-day" text={line.text} title="Line to say, all dishes" />
      <Notes line={line} />
      <ToBreakdown episodeId={view.file.episode.id} scope={{ kind: 'day' }} />
    </section>
  );
}

/** The numbers that lines are made of: to 1 kcal, whatever the written ones are rounded to. */
function spokenNumbers({ file, figures }: EpisodeView): PublishedNumbers {
  return confirmedOnly(publishedNumbers(file, figures, { energyStep: 1 }));
}
