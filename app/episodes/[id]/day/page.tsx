import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonForm } from '../../../_forms/button-form';
import { EmptyState } from '../../../_ui/empty-state';
import { SlateHead } from '../../../_ui/slate-head';
import type { EpisodeFile } from '#lib/episode/schema';
import { daySheet } from '#lib/shoot/day-sheet';
import { likelyDay } from '#lib/shoot/likely';
import { likelyInWords } from '#lib/shoot/likely-words';
import { pinCost, withPin, type PinTry } from '#lib/shoot/pin-cost';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { askedDay } from './asked-day';
import { NotThisDay } from './_components/not-this-day';
import { readAdding } from './read-adding';
import { askedPin } from './times-schema';
import { makeDay } from './actions';
import { DayView } from './_components/day-view';
import { readDays } from '#lib/store/read-days';
import { readSpans } from '#lib/store/read-step-ties';
import { plannedDay, SEED } from '#lib/work/day-searches';

export const metadata: Metadata = { title: 'Day' };

/** The day with a pin, as far as it is planned within a moment. */
const tryOut = (file: EpisodeFile, pin: PinTry) => plannedDay(withPin(file, pin), 'first look');

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{
    readonly day?: string | string[];
    readonly with?: string | string[];
    readonly edit?: string | string[];
    readonly at?: string | string[];
    readonly pin?: string | string[];
    readonly when?: string | string[];
    readonly to?: string | string[];
  }>;
}

export default async function DayPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { edit, at, day, with: other, ...asked } = await searchParams;
  const dayId = askedDay({ day });
  const read = await readRevisedEpisode(id, new Date().toISOString(), { dayId });
  if (!read) notFound();
  const { file, revs } = read;
  if (!file.day && dayId) {
    return (
      <>
        <SlateHead kind="Filming day" title={file.episode.title} />
        <NotThisDay episodeId={id} />
      </>
    );
  }
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
  const pin = askedPin(asked, plan);
  const likely = searching ? null : likelyDay(file, solved, { seed: SEED });
  const page = {
    file,
    day: file.day,
    days: await readDays(id),
    adding: await readAdding(file, typeof other === 'string' ? other : null),
    plan,
    searching,
    sheet: daySheet(file, plan),
    likely: likely === null ? null : likelyInWords(likely, file, plan),
    spans: await readSpans(id),
    revs,
    editing: typeof edit === 'string' ? edit : null,
    at: typeof at === 'string' ? at : null,
    tried: pin && { pin, cost: pinCost(plan, (await tryOut(file, pin)).plan, pin) },
  };
  return <DayView page={page} />;
}
