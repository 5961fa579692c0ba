import { v7 as uuid } from 'uuid';
import { MOST_ALSO } from '#lib/episode/step-limits';
import { UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';
import type { EpisodeFile } from '#lib/episode/schema';
import { failed, ok, type Result } from '#lib/result';
import { placeColumns } from '#lib/shoot/day-place';
import type { Edit } from '#lib/store/command';
import type { DayOfEpisode } from '#lib/store/read-days';
import type { Placed } from './days-schema';

const refused = (path: string, message: string) => failed({ path, code: 'refused', message });

/**
 * Why another episode cannot come to a day, in words, or nothing: it is there, it is cooked in another kitchen, nothing
 * of it is chosen, or what is chosen is no longer its.
 */
export function refusalToAdd(
  day: DayOfEpisode,
  other: EpisodeFile,
  places: readonly Placed[],
): Result<null> {
  const { id, title, segments } = other.episode;
  if (day.episodes.some((each) => each.id === id)) {
    const where = 'what of it is filmed is chosen on its own page of the day';
    return refused('otherId', `“${title}” is on this day already: ${where}.`);
  }
  if (day.episodes.length > MOST_ALSO) {
    return refused('otherId', `A day holds ${day.episodes.length} episodes: make another day.`);
  }
  if (other.kitchen.id !== day.kitchenId) {
    const words = `“${title}” is cooked in ${other.kitchen.name}, and a day has one kitchen.`;
    return refused('otherId', words);
  }
  const lost = places.find(({ segmentId }) => !segments.some((own) => own.id === segmentId));
  if (lost) {
    return refused('otherId', `A segment of “${title}” was removed meanwhile: choose again.`);
  }
  if (places.length === 0) return refused('otherId', 'Choose what of it is filmed that day.');
  return ok(null);
}

/** The edits that put an episode's segments on a day after what is there. */
export function addEpisodeEdits(
  dayId: string,
  other: Pick<EpisodeFile, 'episode'>,
  places: readonly Placed[],
  positions: readonly number[],
): Edit[] {
  const { id, segments } = other.episode;
  const chosen = segments.flatMap((segment) =>
    places.filter(({ segmentId }) => segmentId === segment.id),
  );
  return [
    { op: 'create', entity: 'DayEpisode', row: { id: uuid(), dayId, episodeId: id } },
    ...chosen.map(({ segmentId, way }, at): Edit => ({
      op: 'create',
      entity: 'DaySegment',
      row: {
        ...{ ...UNSAID_DAY_SEGMENT, ...placeColumns(way) },
        ...{ id: uuid(), dayId, segmentId, position: positions[at] ?? 0 },
      },
    })),
  ];
}
