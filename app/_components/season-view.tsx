import Link from 'next/link';
import { ButtonLink } from '../_ui/button';
import { Disclosure } from '../_ui/disclosure';
import { SlateHead } from '../_ui/slate-head';
import { STAGE_WORDS, stageOf } from '#lib/overview/stage';
import type { SeasonEpisode } from '#lib/store/read-season';
import { printDay } from '#lib/units/print-date';
import { BringInForm } from './bring-in-form';
import { NewEpisodeForm } from './new-episode-form';
import { ShortWayForm } from './short-way-form';

interface Props {
  readonly episodes: readonly SeasonEpisode[];
  /** Local date, `YYYY-MM-DD`. */
  readonly today: string;
  /** The last episode of this page, if there are more after it. */
  readonly next: string | null;
}

/** All episodes by date with where they stand, and the ways to begin one, the shortest first. */
export function SeasonView({ episodes, today, next }: Props) {
  return (
    <>
      <SlateHead kind="Season" title="Episodes" />
      <div className="grid gap-x-14 gap-y-12 lg:grid-cols-[minmax(0,1.9fr)_minmax(0,1fr)]">
        {episodes.length === 0 ? (
          <section aria-labelledby="short-way">
            <h2 id="short-way">Your first number</h2>
            <p className="mt-2 mb-5 max-w-[56ch] text-lead">
              One dish is enough: paste its ingredients, and its calories, macros, a line to say and
              a description are there. Dates, steps and the kitchen can wait.
            </p>
            <ShortWayForm first />
          </section>
        ) : (
          <section aria-label="Episodes by date">
            <ul className="border-t-[1.5px] border-ink">
              {episodes.map((episode) => (
                <EpisodeRow key={episode.id} episode={episode} today={today} />
              ))}
            </ul>
            {next && (
              <p className="mt-6">
                <ButtonLink href={`/?after=${next}`}>Earlier episodes</ButtonLink>
              </p>
            )}
          </section>
        )}
        <div className="grid content-start gap-8">
          {episodes.length > 0 && (
            <section aria-labelledby="short-way">
              <h2 id="short-way" className="mb-4">
                A number now
              </h2>
              <ShortWayForm />
            </section>
          )}
          <section aria-label="Other ways to begin" className="border-t border-line pt-3">
            <Disclosure words="Begin an episode with its title">
              <NewEpisodeForm />
            </Disclosure>
            <Disclosure words="Bring in an episode file">
              <BringInForm />
            </Disclosure>
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
