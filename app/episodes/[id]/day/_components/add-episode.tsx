import Link from 'next/link';
import { PLACE_WAY_WORDS } from '#lib/shoot/day-place';
import { AddEpisodeForm } from './add-episode-form';
import { dayHref, type DayPage } from './view';

const WAYS = [
  { value: '', words: 'not on this day' },
  ...Object.entries(PLACE_WAY_WORDS).map(([value, words]) => ({ value, words })),
];

/** Address at which another episode's segments are chosen for the day. */
function withHref(page: DayPage, episodeId: string): string {
  return dayHref(page, `?with=${encodeURIComponent(episodeId)}#further`);
}

/** Another episode on the day, whole, in part or for a pickup: which, then what of it. */
export function AddEpisode({ page }: { readonly page: DayPage }) {
  const { adding } = page;
  if (adding?.kind === 'what') {
    return (
      <div>
        <h2 className="text-lead">{adding.episode.title} on this day</h2>
        {adding.segments.length === 0 ? (
          <p className="text-soft">It has no segments yet.</p>
        ) : (
          <AddEpisodeForm
            hidden={{
              episodeId: page.file.episode.id,
              dayId: page.day.id,
              otherId: adding.episode.id,
            }}
            segments={adding.segments}
            ways={WAYS}
          />
        )}
        <Link
          href={dayHref(page, '#further')}
          className="link mt-2 inline-flex min-h-11 items-center"
        >
          Not this one
        </Link>
      </div>
    );
  }
  return (
    <div>
      <h2 className="text-lead">Another episode on this day</h2>
      <p className="mb-2 text-soft">
        Its dishes, or a shot of it that is to be got once more, share your hands, ovens and light.
      </p>
      {adding === null || adding.episodes.length === 0 ? (
        <p className="text-soft">There is none that is not on it already.</p>
      ) : (
        <ul className="max-h-72 overflow-y-auto" aria-label="Episodes to choose from">
          {adding.episodes.map(({ id, title }) => (
            <li key={id}>
              <Link href={withHref(page, id)} className="link inline-flex min-h-11 items-center">
                {title}
              </Link>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
