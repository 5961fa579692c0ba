import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import { placeInWords } from '#lib/shoot/day-place';
import { printDay } from '#lib/units/print-date';
import { withDay } from '../asked-day';
import { makeAnotherDay, takeDayOut, takeOff } from '../days-actions';
import { AddEpisode } from './add-episode';
import { revOf, type DayPage } from './view';

const LINK = 'inline-flex min-h-11 items-center';

/** The filming days of the episode where it has several, the others that are filmed on this one, and how to add to both. */
export function Days({ page }: { readonly page: DayPage }) {
  const { id } = page.file.episode;
  const others = page.days.find((day) => day.id === page.day.id)?.episodes ?? [];
  const alone = others.every((other) => other.id === id);
  return (
    <div className="mb-4">
      {page.days.length > 1 && <DayChoice page={page} />}
      {!alone && <AlsoFilmed page={page} />}
      <details open={page.adding?.kind === 'what'} id="further">
        <summary className="link min-h-14 content-center">
          Another day, or another episode on this one
        </summary>
        <div className="grid gap-x-8 gap-y-5 border-[1.5px] border-ink bg-raised p-4 md:grid-cols-2">
          <div>
            <h2 className="text-lead">Another filming day</h2>
            <p className="mb-2 text-soft">
              The day after the last one, with what is on none yet. Dishes may be cooked on one day
              and filmed on another.
            </p>
            <div className="flex flex-wrap gap-3">
              <ButtonForm
                action={makeAnotherDay}
                values={{ episodeId: id }}
                tone="plain"
                size="usual"
              >
                Make another day
              </ButtonForm>
              {page.days.length > 1 && alone && (
                <ButtonForm
                  action={takeDayOut}
                  values={{ episodeId: id, dayId: page.day.id, rev: revOf(page, page.day.id) }}
                  tone="hand"
                  size="usual"
                >
                  Take {printDay(page.day.date)} out
                </ButtonForm>
              )}
            </div>
          </div>
          <AddEpisode page={page} />
        </div>
      </details>
    </div>
  );
}

function DayChoice({ page }: { readonly page: DayPage }) {
  const { id } = page.file.episode;
  return (
    <nav aria-label="Filming days" className="mb-3 border-y border-line">
      <ul>
        {page.days.map((day) => {
          const own = day.places.filter((place) => place.episodeId === id);
          const filmed = own.map(placeInWords).join(', ') || 'nothing of this episode yet';
          const here = day.id === page.day.id;
          return (
            <li key={day.id} className="flex flex-wrap items-center gap-x-3">
              <Link
                href={withDay(`/episodes/${id}/day`, day.id)}
                aria-current={here ? 'page' : undefined}
                className={`${LINK} ${here ? 'font-semibold' : 'link'}`}
              >
                {printDay(day.date)}
                <span className="unseen">: {filmed}</span>
              </Link>
              <span aria-hidden className="text-soft max-md:pb-2">
                {here && 'shown here · '}
                {filmed}
              </span>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

function AlsoFilmed({ page }: { readonly page: DayPage }) {
  const { id, title } = page.file.episode;
  const day = page.days.find((each) => each.id === page.day.id);
  const others = day?.episodes.filter((each) => each.id !== id) ?? [];
  return (
    <section aria-labelledby="also" className="my-3">
      <h2 id="also" className="text-lead">
        Filmed on this day too
      </h2>
      <ul className="border-t border-line">
        {others.map((other) => (
          <li
            key={other.rowId}
            className="flex flex-wrap items-center gap-x-4 border-b border-line py-1"
          >
            <Link
              href={withDay(`/episodes/${other.id}/day`, page.day.id)}
              className={`link ${LINK}`}
            >
              {other.title}
            </Link>
            <span className="mr-auto text-soft">
              {day?.places
                .filter((place) => place.episodeId === other.id)
                .map(placeInWords)
                .join(', ') || 'nothing of it yet'}
            </span>
            <ButtonForm
              action={takeOff}
              values={{ episodeId: id, dayId: page.day.id, otherId: other.id }}
              label={`Take ${other.title} off this day`}
              size="usual"
            >
              Take it off this day
            </ButtonForm>
          </li>
        ))}
      </ul>
      <ButtonForm
        action={takeOff}
        values={{ episodeId: id, dayId: page.day.id, otherId: id }}
        label={`Take ${title} off this day`}
        size="usual"
      >
        Take this episode off the day instead
      </ButtonForm>
    </section>
  );
}
