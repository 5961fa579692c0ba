import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { eveningBefore } from '#lib/overview/evening-before';
import { readEpisodeFile } from '#lib/store/read-episode';
import { plannedDay } from '#lib/work/day-searches';
import { NotThisDay } from '../_components/not-this-day';
import { askedDay, type AskedDay } from '../asked-day';
import { EveningView } from './_components/evening-view';

export const metadata: Metadata = { title: 'Evening before' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<AskedDay>;
}

/** What is done the evening before the filming day, worked back from its order. */
export default async function EveningPage({ params, searchParams }: Props) {
  const { id } = await params;
  const dayId = askedDay(await searchParams);
  const file = await readEpisodeFile(id, new Date().toISOString(), { dayId });
  if (!file) notFound();
  if (!file.day && dayId) return <NotThisDay episodeId={id} />;
  if (!file.day) {
    return (
      <>
        <SlateHead kind="The evening before" title={file.episode.title} />
        <EmptyState
          title="No filming day yet"
          action={<ButtonLink href={`/episodes/${id}/day`}>To the day page</ButtonLink>}
        >
          The evening is worked back from the filming day: make one first.
        </EmptyState>
      </>
    );
  }
  const { plan, searching } = await plannedDay(file, 'first look');
  const evening = eveningBefore(file, plan);
  if (evening === null) notFound();
  return (
    <EveningView
      file={file}
      evening={evening}
      plan={plan}
      searching={searching}
      dayId={dayId ?? null}
    />
  );
}
