import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { dishesOf } from '#lib/episode/context';
import { countedNutrients, HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { readEpisodeFile } from '#lib/store/read-episode';
import { fitRows } from '#lib/swap/fit-form-rows';
import { proposedFit, targetsFor, wishOf } from '#lib/swap/fit-wish';
import type { Result } from '#lib/result';
import { tellFit, type FitAnswer } from '#lib/swap/recipe-fit';
import { amountsText } from '#lib/swap/told-fit';
import { fitBeside } from '#lib/work/fits';
import { FitView } from '../_components/fit-view';
import { askedFrom } from '../fit-text';

export const metadata: Metadata = { title: 'Recipe fit' };

/** Seconds for each search; the first mostly takes a tenth of one. */
const SECONDS = 2;

/** Said of an address that was cut or changed on its way. */
const UNREAD = 'What this address asks cannot be read: say below what it should come to.';

interface Props {
  readonly params: Promise<{ readonly id: string; readonly dish: string }>;
  readonly searchParams: Promise<{ readonly asked?: string | string[] }>;
}

export default async function FitPage({ params, searchParams }: Props) {
  const { id, dish: segmentId } = await params;
  const { asked: text } = await searchParams;
  const asked = askedFrom(text);
  const file = await readEpisodeFile(id, new Date().toISOString());
  const dish = file && dishesOf(file.episode.segments).find((each) => each.id === segmentId);
  if (!file || !dish) notFound();
  const shown = asked ?? proposedFit(file, segmentId);
  const wish = wishOf(file, segmentId, shown, SECONDS);
  const answer = asked && (await fitBeside({ file, wish }));
  const limited = shown.limits.map(({ nutrient }) => nutrient);
  const own = countedNutrients(file.episode).filter((each) => each === 'fibre');
  return (
    <FitView
      page={{
        ...{ file, dish, asked: shown },
        targets: targetsFor(file, segmentId),
        nutrients: [...new Set([...HEADLINE_NUTRIENTS, ...own, ...limited])],
        rows: fitRows(file, segmentId, shown),
        was: amountsText(file, segmentId),
        fit: answer?.ok ? tellFit(file, wish, answer.value) : null,
        problems: [...(text && !asked ? [UNREAD] : []), ...problemsOf(answer)],
      }}
    />
  );
}

const problemsOf = (answer: Result<FitAnswer> | null): readonly string[] =>
  answer && !answer.ok ? answer.problems.map(({ message }) => message) : [];
