import Link from 'next/link';
import { byFirstNeed, type RunsOut } from '#lib/shopping/runs-out';
import { printDay } from '#lib/units/print-date';

interface Props {
  readonly all: readonly RunsOut[];
  /** How many episodes are planned in the days looked at. */
  readonly planned: number;
}

/** What planned days need over what counts at home, by the episode that needs it first. */
export function RunsOutPart({ all, planned }: Props) {
  if (planned === 0) {
    return (
      <p className="mt-1 text-soft">
        No filming day is planned. Give an episode its day: what its dishes need over what is at
        home then stands here.
      </p>
    );
  }
  if (all.length === 0) {
    return <p className="mt-1">Nothing: all that the planned days need is at home.</p>;
  }
  return (
    <>
      {byFirstNeed(all).map(({ of, foods }) => (
        <div key={of.episodeId} className="border-b border-line py-1">
          <p className="flex flex-wrap items-baseline justify-between gap-x-4">
            <span>
              {of.date !== null && <b className="font-semibold">{printDay(of.date)}</b>}{' '}
              {of.episode}
              <span className="hidden print:inline">: short of what is marked below</span>
            </span>
            <Link
              className="link inline-flex min-h-11 items-center print:hidden"
              href={`/episodes/${of.episodeId}/shopping`}
            >
              Shopping list
            </Link>
          </p>
          <details>
            <summary className="link min-h-11 content-center">
              {foods.length === 1 ? 'One food is short' : `${foods.length} foods are short`}
            </summary>
            <ul className="pb-2">
              {foods.map(({ foodId, name, words }) => (
                <li key={foodId}>
                  <Link
                    className="link inline-flex min-h-11 items-center"
                    href={`/pantry/foods/${foodId}`}
                  >
                    {name}
                  </Link>{' '}
                  <span className="text-soft">{words}</span>
                </li>
              ))}
            </ul>
          </details>
        </div>
      ))}
    </>
  );
}
