import Link from 'next/link';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { MissingPart as Missing } from '#lib/figures/figure';
import { missingText } from '#lib/figures/print-figure';
import type { DishPlace } from '#lib/store/read-dishes';
import { editHref, rowHref } from '../../_components/view';

interface Props {
  readonly file: EpisodeFile;
  readonly missing: readonly Missing[];
  /** Where the dishes stand that others are made from, by their recipe's id. */
  readonly places?: Readonly<Record<string, DishPlace>>;
}

/** What the number lacks and why, each with the way to where it is filled in. */
export function MissingPart({ file, missing, places = {} }: Props) {
  if (missing.length === 0) return null;
  return (
    <ul className="mt-2" aria-label="What is missing">
      {missing.map((part) => (
        <li key={`${part.lineId} ${part.reason}`} className="hatch border-b border-line py-1.5">
          {missingText([part])}.{' '}
          <Link
            className="link inline-flex min-h-6 items-center print:hidden"
            href={mendHref(file, part, places)}
          >
            Fill it in<span className="unseen">: {part.text}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** An ingredient's own form, or the dish where all of it is meant; in the episode where that dish stands. */
function mendHref(
  { episode, recipes }: EpisodeFile,
  { lineId }: Missing,
  places: Readonly<Record<string, DishPlace>>,
): string {
  const holds = ({ id, lines }: Recipe) =>
    id === lineId || lines.some((line) => line.id === lineId);
  const dish = episode.segments.find(({ recipe }) => recipe !== null && holds(recipe));
  const nested = recipes.find(holds);
  const place = nested && places[nested.id];
  if (place) {
    return nested.id === lineId
      ? rowHref(place.episodeId, place.segmentId)
      : editHref(place.episodeId, lineId);
  }
  if (!dish) return `/episodes/${episode.id}`;
  return dish.recipe?.id === lineId ? rowHref(episode.id, dish.id) : editHref(episode.id, lineId);
}
