import { ButtonLink } from '../_ui/button';
import { Disclosure } from '../_ui/disclosure';
import { SlateHead } from '../_ui/slate-head';
import type { SeasonEpisode } from '#lib/store/read-season';
import { BringInForm } from './bring-in-form';
import { EpisodeRow } from './episode-row';
import { NewEpisodeForm } from './new-episode-form';
import { OutEpisodeForm } from './out-episode-form';
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
          <div className="grid gap-12">
            <section aria-labelledby="short-way">
              <h2 id="short-way">Your first number</h2>
              <p className="mt-2 mb-5 max-w-[56ch] text-lead">
                One dish is enough: paste its ingredients, and its calories, macros, a line to say
                and a description are there. Dates, steps and the kitchen can wait.
              </p>
              <ShortWayForm first />
            </section>
            <section aria-labelledby="out-heading" className="border-t-[1.5px] border-ink pt-6">
              <h2 id="out-heading">An episode that is already out</h2>
              <p className="mt-2 mb-5 max-w-[56ch] text-lead">
                Paste what was said and what stands under it. You see by timecode what the
                ingredients don’t support, what was named and never counted, and the right words.
              </p>
              <OutEpisodeForm />
            </section>
          </div>
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
            {episodes.length > 0 && (
              <Disclosure words="An episode that is already out">
                <OutEpisodeForm />
              </Disclosure>
            )}
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
