import Link from 'next/link';
import type { ReactNode } from 'react';
import { ButtonLink } from '../../../../../_ui/button';
import { PrintButton } from '../../../../../_ui/print-button';
import { SlateHead } from '../../../../../_ui/slate-head';
import { filmedTogether } from '#lib/episode/also-filmed';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EveningBefore } from '#lib/overview/evening-before';
import {
  cardWords,
  EVERY_TIME,
  outfitWords,
  shortWords,
  tareWords,
  weighOutWords,
} from '#lib/overview/evening-words';
import { FOLLOW_LOCAL_CODE, sourceText } from '#lib/safety/caution';
import { clockText } from '#lib/shoot/day-words';
import type { ShootPlan } from '#lib/shoot/plan';
import { printDay } from '#lib/units/print-date';
import { withDay } from '../../asked-day';
import { EveningSteps } from './evening-steps';

interface Props {
  readonly file: EpisodeFile;
  readonly evening: EveningBefore;
  readonly plan: ShootPlan;
  /** Whether a better order of the day is still looked for, which may move what is tied to it. */
  readonly searching: boolean;
  /** The filming day that the address names; null for the one that is next. */
  readonly dayId: string | null;
}

/** The evening before: its steps by the clock, and what to get ready; printed it is one page. */
export function EveningView({ file, evening, plan, searching, dayId }: Props) {
  const { episode, kitchen } = file;
  const here = `/episodes/${episode.id}/day`;
  const { short, cards } = evening;
  return (
    <div className="print:text-[9pt] print:leading-[1.15]">
      <style>{'@page { margin: 8mm }'}</style>
      <SlateHead
        kind="The evening before"
        title={filmedTogether(file).episode.title}
        cells={[
          { name: 'Evening', value: printDay(evening.date) },
          { name: 'Film', value: printDay(plan.date) },
          { name: 'Start', value: clockText(plan.startMin) },
        ]}
      />
      <p className="mb-8 flex flex-wrap items-center gap-3 print:hidden">
        <PrintButton>Print this page</PrintButton>
        <ButtonLink href={withDay(`${here}/evening-before.txt`, dayId)} download>
          Text file
        </ButtonLink>
        <Link href={withDay(here, dayId)} className="link inline-flex min-h-11 items-center px-2">
          Back to the day
        </Link>
      </p>
      <Section id="steps" title="Begin by">
        {searching && (
          <p className="mb-2 text-fine text-soft print:hidden">
            A better order of the day is still looked for. These times may change with it.
          </p>
        )}
        <EveningSteps evening={evening} />
      </Section>
      <div className="gap-x-10 md:columns-2 print:columns-2 print:gap-x-6">
        <Section id="ready" title="Get ready">
          <Boxes
            items={[
              ...EVERY_TIME,
              cardWords(cards, kitchen.videoMbps),
              outfitWords(evening.outfit),
              ...tareWords(evening.tares),
            ]}
          />
        </Section>
        <Section id="weigh" title="Weigh out">
          <WeighOut lines={evening.weighOut} />
        </Section>
        <Section id="short" title="Short in the pantry">
          {short.items.length + short.unmatched.length === 0 ? (
            <p className="text-soft">Nothing: all of it is in the kitchen.</p>
          ) : (
            <Boxes
              items={[
                ...short.items.map(shortWords),
                ...short.unmatched.map((line) => `${line}: no food chosen yet`),
              ]}
            />
          )}
        </Section>
        <Cautions cautions={evening.cautions} />
      </div>
    </div>
  );
}

function Section(props: {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}) {
  return (
    <section aria-labelledby={props.id} className="mb-10 print:mb-2">
      <h2 id={props.id}>{props.title}</h2>
      <div className="mt-2 print:mt-0">{props.children}</div>
    </section>
  );
}

/** Lines to tick: by hand on paper, and for as long as the page stands open on screen. */
function Boxes({ items }: { readonly items: readonly string[] }) {
  return (
    <ul>
      {items.map((item, at) => (
        <li
          key={`${at} ${item}`}
          className="break-inside-avoid border-b border-line print:border-0"
        >
          <label className="flex min-h-11 items-center gap-3 py-1 print:min-h-0 print:gap-2 print:py-0">
            <input type="checkbox" className="size-5 shrink-0 accent-ink print:hidden" />
            <span className="hidden size-3 shrink-0 border border-ink print:inline-block" />
            <span className="min-w-0 wrap-anywhere">{item}</span>
          </label>
        </li>
      ))}
    </ul>
  );
}

function WeighOut({ lines }: { readonly lines: EveningBefore['weighOut'] }) {
  const dishes = [...new Set(lines.map(({ dish }) => dish))];
  if (dishes.length === 0) {
    return <p className="text-soft">Nothing dry has planned grams yet.</p>;
  }
  return dishes.map((dish) => (
    <div key={dish} className="mb-3 print:mb-0">
      <h3>{dish}</h3>
      <Boxes items={lines.filter((line) => line.dish === dish).map(weighOutWords)} />
    </div>
  ));
}

function Cautions({ cautions }: Pick<EveningBefore, 'cautions'>) {
  if (cautions.length === 0) return null;
  return (
    <Section id="cautions" title="Cautions">
      <ul>
        {cautions.map(({ id, text, source }) => (
          <li key={id} className="mb-2 print:mb-0">
            {text} <span className="text-fine text-soft">{sourceText(source)}</span>
          </li>
        ))}
      </ul>
      <p className="text-fine text-soft">{FOLLOW_LOCAL_CODE}</p>
    </Section>
  );
}
