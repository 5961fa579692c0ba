import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { STATE_WORDS } from '../../../_ui/words';
import { cookMethods } from '#lib/episode/yield-words';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { takeFood } from '../match-actions';
import { takeYield } from '../yield-actions';
import { OwnWeightsForm } from './own-weights-form';
import { lookHref, revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly line: RecipeLine;
}

/** The id of the place where an ingredient's ways out stand. */
export function statesId(lineId: string): string {
  return `states-${lineId}`;
}

/** Which two states differ: `'weighed raw, and “Lentils, boiled” is listed cooked'`; null without a food. */
export function statesWords(view: Pick<EpisodeView, 'file'>, line: RecipeLine): string | null {
  const food = view.file.foods.find(({ id }) => id === line.foodId);
  if (!food) return null;
  const [weighed, listed] = [STATE_WORDS[line.state], STATE_WORDS[food.version.state]];
  return `weighed ${weighed}, and “${food.name}” is listed ${listed}`;
}

/**
 * An ingredient weighed in another state than its food is listed in, with no cooked weight known: what differs,
 * and every way out right there. Nothing is guessed.
 */
export function StatesPart({ view, line }: Props) {
  const episodeId = view.file.episode.id;
  const food = view.file.foods.find(({ id }) => id === line.foodId);
  const ways = view.states?.[line.id];
  const ids = { episodeId, lineId: line.id };
  if (!food) return null;
  return (
    <div id={statesId(line.id)} className="grid gap-3">
      <p className="text-fine font-semibold">
        Open: {statesWords(view, line)}, and no cooked weight says what the one becomes as the
        other. Either of these settles it.
      </p>
      {ways && ways.yields.length > 0 && (
        <div>
          <p>A cooked weight that is known of a food like it:</p>
          <ul>
            {ways.yields.map(({ foodId, yieldId, words }) => (
              <li key={yieldId}>
                <ButtonForm
                  action={takeYield}
                  values={{ ...ids, fromFoodId: foodId, yieldId }}
                  label={`Take for ${line.text}: ${words}`}
                >
                  {words}
                </ButtonForm>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div>
        <p>Your own two weights of one cook:</p>
        <OwnWeightsForm ids={ids} methods={cookMethods(food)} />
      </div>
      <div>
        <p>Another food, listed {STATE_WORDS[line.state]}:</p>
        <ul>
          {(ways?.foods ?? []).map(({ id, name, note }) => (
            <li key={id} className="flex flex-wrap items-baseline gap-x-3">
              <ButtonForm
                action={takeFood}
                values={{ ...ids, rev: revOf(view, line.id), foodId: id }}
                label={`Count ${line.text} as ${name}`}
              >
                {name}
              </ButtonForm>
              <span className="text-fine text-soft">{note}</span>
            </li>
          ))}
          <li className="text-fine">
            <Link
              className="link inline-flex min-h-6 items-center"
              href={lookHref(episodeId, line.id, ways?.look ?? `${line.text} ${line.state}`)}
            >
              Look for one listed {STATE_WORDS[line.state]}
            </Link>
          </li>
        </ul>
      </div>
    </div>
  );
}
