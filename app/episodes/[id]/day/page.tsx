import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonForm } from '../../../_forms/button-form';
import { EmptyState } from '../../../_ui/empty-state';
import { SlateHead } from '../../../_ui/slate-head';
import { daySheet } from '#lib/shoot/day-sheet';
import { likelyDay } from '#lib/shoot/likely';
import { likelyInWords } from '#lib/shoot/likely-words';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { makeDay } from './actions';
import { DayView } from './_components/day-view';
import { readSpans } from '#lib/store/read-step-ties';
import { plannedDay, SEED } from '#lib/work/day-searches';

export const metadata: Metadata = { title: 'Day' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly edit?: string | string[];
    readonly at?: string | string[];
  }>;
}

export default async function DayPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { edit, at } = await searchParams;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  if (!file.day) {
    return (
      <>
        <SlateHead kind="Filming day" title={file.episode.title} />
        <EmptyState
          title="No filming day yet"
          action={
            <ButtonForm action={makeDay} values={{ episodeId: id }} tone="go" size="day">
              Make a filming day
            </ButtonForm>
          }
        >
          It begins today at nine with every segment; date, start and what is filmed can be changed
          then. Steps are put in order by the clock as soon as there are any.
        </EmptyState>
      </>
    );
  }
  const { plan, solved, searching } = await plannedDay(file, 'first look');
  const likely = searching ? null : likelyDay(file, solved, { seed: SEED });
  const page = {
    file,
    day: file.day,
    plan,
    searching,
    sheet: daySheet(file, plan),
    likely: likely === null ? null : likelyInWords(likely, file, plan),
    spans: await readSpans(id),
    revs: await readRevisions(id),
    editing: typeof edit === 'string' ? edit : null,
    at: typeof at === 'string' ? at : null,
  };
  return <DayView page={page} />;
}
