import Link from 'next/link';
import { ButtonForm } from '../_forms/button-form';
import { StageRule } from '../_ui/stage-rule';
import { stageOf } from '#lib/overview/stage';
import type { SeasonEpisode } from '#lib/store/read-season';
import { printDay } from '#lib/units/print-date';
import { beginAgain } from '../again-actions';

interface Props {
  readonly episode: SeasonEpisode;
  /** Local date, `YYYY-MM-DD`. */
  readonly today: string;
}

/** An episode of the season: when it is published, what it holds, and where it stands. */
export function EpisodeRow({ episode, today }: Props) {
  const filmingDate = episode.filmingDates.at(-1) ?? null;
  const stage = stageOf({ ...episode, filmingDate }, today);
  const { publishOn } = episode;
  return (
    <li className="border-b border-line">
      <Link
        href={`/episodes/${episode.id}`}
        className="group grid items-baseline gap-x-8 gap-y-2 py-5 hover:bg-raised md:grid-cols-[6.5rem_minmax(0,1fr)_10rem]"
      >
        <span className="max-md:flex max-md:items-baseline max-md:gap-2">
          <span
            className={`block font-slate text-head font-semibold ${publishOn ? '' : 'text-soft'}`}
          >
            {publishOn ? printDay(publishOn) : 'no date yet'}
          </span>
          <span className="mt-1 block text-fine text-soft">{publishOn && 'to publish'}</span>
        </span>
        <span>
          <span className="block font-slate text-title font-semibold text-balance group-hover:underline group-hover:decoration-2 group-hover:underline-offset-4">
            {episode.title}
          </span>
          <span className="mt-1 block text-fine text-soft">{factWords(episode)}</span>
        </span>
        <StageRule stage={stage} />
      </Link>
      <div className="-mt-3 pb-3 md:ml-[8.5rem] print:hidden">
        <ButtonForm
          action={beginAgain}
          values={{ episodeId: episode.id }}
          label={`Again from this: ${episode.title}`}
        >
          Again from this
        </ButtonForm>
      </div>
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
