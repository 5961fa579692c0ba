import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { filmedTogether } from '#lib/episode/also-filmed';
import { daySheet } from '#lib/shoot/day-sheet';
import { dayLots } from '#lib/shoot/lot-actions';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { printDay } from '#lib/units/print-date';
import { plannedDay } from '#lib/work/day-searches';
import { LiveDay } from './_components/live-day';
import { NotThisDay } from '../_components/not-this-day';
import { askedDay, withDay, type AskedDay } from '../asked-day';
import { dishesOfDay } from './dishes-of-day';
import { liveRows } from './live-row';

export const metadata: Metadata = { title: 'On the day' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<AskedDay>;
}

export default async function LiveDayPage({ params, searchParams }: Props) {
  const { id } = await params;
  const dayId = askedDay(await searchParams);
  const file = await readEpisodeFile(id, new Date().toISOString(), { dayId });
  if (!file) notFound();
  const { day, episode, kitchen } = file;
  const shown = filmedTogether(file).episode.title;
  const dayPage = `/episodes/${id}/day`;
  if (!day) {
    const action = <ButtonLink href={dayPage}>To the day page</ButtonLink>;
    return (
      <>
        <h1 className="mb-4 text-title">On the day</h1>
        {dayId ? (
          <NotThisDay episodeId={id} />
        ) : (
          <EmptyState title="No filming day yet" action={action}>
            Once there is a filming day with steps, this page shows what is to be done now and next.
          </EmptyState>
        )}
      </>
    );
  }
  const { plan } = await plannedDay(file, 'whole');
  const sheet = daySheet(file, plan);
  const first = await readDayEvents(day.id);
  return (
    <>
      <div className="mb-4 flex flex-wrap items-baseline justify-between gap-x-6">
        <h1 className="text-title">On the day</h1>
        <p className="text-soft">
          {shown}, {printDay(day.date)}
        </p>
      </div>
      <LiveDay
        address={`${dayPage}/events`}
        replanAddress={`${dayPage}/live/replan`}
        dayId={day.id}
        date={day.date}
        zone={kitchen.zone}
        region={episode.region}
        rows={liveRows(sheet, file)}
        lots={dayLots(file)}
        first={first}
        firstDishes={await dishesOfDay(file, first.events, [])}
        sayAddress={`${dayPage}/live/say`}
        photoAddress={`${dayPage}/live/photo`}
      />
      <p className="mt-8">
        <ButtonLink href={withDay(dayPage, dayId)}>The whole day</ButtonLink>
      </p>
    </>
  );
}
