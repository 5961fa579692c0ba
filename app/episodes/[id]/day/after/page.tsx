import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { filmedTogether } from '#lib/episode/also-filmed';
import { readShortages } from '#lib/store/day-stock';
import { readEpisodeFile } from '#lib/store/read-episode';
import { printDay } from '#lib/units/print-date';
import { LastChange } from '../../_components/last-change';
import { lastAct } from '../../last-act';
import { NotThisDay } from '../_components/not-this-day';
import { askedDay, withDay, type AskedDay } from '../asked-day';
import { Shortages } from './_components/shortages';
import { StepTimes } from './_components/step-times';
import { Takes } from './_components/takes';
import { readAfter } from './read-after';

export const metadata: Metadata = { title: 'After the day' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<AskedDay>;
}

/** What the filming day took beside what was planned, and its takes for the edit. */
export default async function AfterDayPage({ params, searchParams }: Props) {
  const { id } = await params;
  const dayId = askedDay(await searchParams);
  const after = await readAfter(id, dayId);
  const dayPage = `/episodes/${id}/day`;
  if (after === null) {
    const file = await readEpisodeFile(id, new Date().toISOString());
    if (!file) notFound();
    if (dayId) return <NotThisDay episodeId={id} />;
    return (
      <>
        <SlateHead kind="After the filming day" title={file.episode.title} />
        <EmptyState
          title="No filming day yet"
          action={<ButtonLink href={dayPage}>To the day page</ButtonLink>}
        >
          Once a filming day was lived through with the page for the day, this page says what its
          steps took, and has its takes for the edit.
        </EmptyState>
      </>
    );
  }
  const { file, day } = after;
  return (
    <>
      <SlateHead
        kind="After the filming day"
        title={filmedTogether(file).episode.title}
        cells={[{ name: 'Filmed', value: printDay(day.date) }]}
      />
      <StepTimes after={after} />
      <Takes after={after} dayId={dayId ?? null} />
      <Shortages shortages={await readShortages(day.id)} />
      <p className="mt-10 flex flex-wrap gap-3 print:hidden">
        <ButtonLink href={withDay(dayPage, dayId)}>The whole day</ButtonLink>
        <ButtonLink href={withDay(`${dayPage}/live`, dayId)}>On the day</ButtonLink>
      </p>
      <LastChange episodeId={id} last={await lastAct(file)} formOpen={false} />
    </>
  );
}
