import Link from 'next/link';
import { ButtonLink } from '../_ui/button';
import { EmptyState } from '../_ui/empty-state';
import { SlateHead } from '../_ui/slate-head';
import { STAGE_WORDS, stageOf } from '#lib/overview/stage';
import type { SeasonEpisode } from '#lib/store/read-season';
import { printDay } from '#lib/units/print-date';
import { BringInForm } from './bring-in-form';
import { NewEpisodeForm } from './new-episode-form';

interface Props {
  readonly episodes: readonly SeasonEpisode[];
  /** Local date, `YYYY-MM-DD`. */
  readonly today: string;
  /** The last episode of this page, if there are more after it. */
  readonly next: string | null;
}

/** All episodes by date with where they stand, and the two ways to begin one. */
export function SeasonView({ episodes, today, next }: Props) {
  return (
    <>
      <SlateHead kind="Season" title="Episodes" />
      <div className="grid gap-x-14 gap-y-12 lg:grid-cols-[minmax(0,1.9fr)_minmax(0,1fr)]">
        <section aria-label="Episodes by date">
          {episodes.length === 0 ? (
            <EmptyState title="No episode yet">
              Begin one with a name, or bring in an episode file.
            </EmptyState>
          ) : (
            <ul className="border-t-[1.5px] border-ink">
              {episodes.map((episode) => (
                <EpisodeRow key={episode.id} episode={episode} today={today} />
              ))}
            </ul>
          )}
          {next && (
            <p className="mt-6">
              <ButtonLink href={`/?after=${next}`}>Earlier episodes</ButtonLink>
            </p>
          )}
        </section>
        <div className="grid content-start gap-10">
          <section aria-labelledby="begin">
            <h2 id="begin" className="mb-4">
              Begin an episode
            </h2>
            <NewEpisodeForm />
          </section>
          <section aria-labelledby="bring" className="border-t border-line pt-5">
            <h2 id="bring" className="mb-4">
              Bring in a file
            </h2>
            <BringInForm />
          </section>
        </div>
      </div>
    </>
  );
}

function EpisodeRow({
  episode,
  today,
}: {
  readonly episode: SeasonEpisode;
  readonly today: string;
}) {
  const filmingDate = episode.filmingDates.at(-1) ?? null;
  const stage = stageOf({ ...episode, filmingDate }, today);
  return (
    <li className="border-b border-line">
      <Link
        href={`/episodes/${episode.id}`}
        className="grid gap-x-6 gap-y-1 py-4 hover:bg-raised md:grid-cols-[7.5rem_minmax(0,1fr)_9rem]"
      >
        <span className="font-slate text-lead font-semibold">
          <span className="unseen">publish: </span>
          {episode.publishOn ? printDay(episode.publishOn) : 'no date yet'}
        </span>
        <span>
          <span className="block font-slate text-title font-semibold">{episode.title}</span>
          <span className="mt-1 block text-fine text-soft">{factWords(episode)}</span>
        </span>
        <span className="flex items-start gap-2.5 md:justify-end md:text-right">
          <span className="font-semibold">{STAGE_WORDS[stage]}</span>
        </span>
      </Link>
    </li>
  );
}

function factWords({ dishes, lines, openLines, filmingDates }: SeasonEpisode): string {
  const filming = filmingDates.map(printDay).join(', ');
  return [
    counted(dishes, 'dish', 'dishes'),
    counted(lines, 'ingredient', 'ingredients'),
    openLines > 0 ? `${openLines} open` : null,
    filming ? `filming ${filming}` : 'no filming day',
  ]
    .filter((part) => part !== null)
    .join(' · ');
}

function counted(count: number, one: string, more: string): string {
  return count === 1 ? `1 ${one}` : `${count} ${more}`;
}
