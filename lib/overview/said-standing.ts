import { dishesOf } from '#lib/episode/context';
import type { SaidLine } from '#lib/episode/said-line';
import { scopeKey } from '#lib/episode/said-scope';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { saidChange, type SaidChange } from '#lib/lock/said-numbers';
import { sayOfDayTo, saysOf, type DaySay } from '#lib/overview/says-of';
import { localDate } from '#lib/units/local-date';
import { printDayOfMonth } from '#lib/units/print-date';

/** A line that was said in front of the camera, and how it stands against the figures as they are now. */
export interface SaidStanding {
  readonly id: string;
  /** The dish that it is about; null for the day. */
  readonly segmentId: string | null;
  /** "Bean tray: one of 4", or "The day". */
  readonly about: string;
  /** The date of saying, in the kitchen's zone: "14 Nov". */
  readonly on: string;
  /** Word for word. */
  readonly text: string;
  /** What has changed under it; null while nothing has. */
  readonly change: SaidChange | null;
  /** The other numbers that were said cannot be made to add up with it. */
  readonly clashes: boolean;
}

/**
 * What was said in front of the camera, in the order of saying, each held against the line as it would be now.
 * @example saidStandings(file)[0] // { about: 'Bean tray: all of it', on: '14 Nov', change: null, … }
 */
export function saidStandings(
  file: EpisodeFile,
  figures: EpisodeFigures = episodeFigures(file),
): SaidStanding[] {
  const { said } = file;
  if (said.length === 0) return [];
  const dishes = dishesOf(file.episode.segments);
  const whole = saysOf(file, said, null, figures);
  const sayNow = ({ scope }: SaidLine): DaySay | null => {
    if (scope.kind === 'day') return whole.ofDay();
    const dish = dishes.find(({ id }) => id === scope.segmentId);
    if (!dish) return null;
    if (scope.kind === 'soFar') return sayOfDayTo(file, scope.segmentId, said);
    return whole.ofDish(dish).find((say) => scopeKey(say.scope) === scopeKey(scope)) ?? null;
  };
  return said.map((line) => {
    const { id, at, scope, text, numbers } = line;
    const now = sayNow(line);
    const segmentId = scope.kind === 'day' ? null : scope.segmentId;
    const dish = dishes.find((each) => each.id === segmentId);
    const about = now?.about ?? 'A portion';
    return {
      id,
      segmentId,
      about: dish ? `${dish.title}: ${about.toLowerCase()}` : about,
      on: printDayOfMonth(localDate(new Date(at), file.kitchen.zone)),
      text,
      change: now ? saidChange(numbers, now.line, file.episode.region) : GONE,
      clashes: now?.clashes ?? false,
    };
  });
}

const GONE: SaidChange = {
  kind: 'off',
  words: 'What it was said of is no longer in the episode.',
};

/** Whether something has changed under what was said so that it no longer covers the numbers. */
export function isBroken({ change }: SaidStanding): boolean {
  return change?.kind === 'off';
}
