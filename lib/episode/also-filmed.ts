import type { AlsoFilmed, Episode, EpisodeFile, Segment } from '#lib/episode/schema';

/**
 * What a filming day is about: the segments of every episode that is filmed on it, as one list. An episode's file is
 * one; the other way round it is none, so that no figure, lock or description can be made of several episodes.
 */
export type DayFile = Pick<
  EpisodeFile,
  'kitchen' | 'foods' | 'recipes' | 'day' | 'stock' | 'packs' | 'also'
> & {
  readonly episode: Pick<Episode, 'id' | 'title' | 'region' | 'segments' | 'links'>;
};

type Part = Pick<AlsoFilmed, 'id' | 'title' | 'segments' | 'links'>;

/**
 * The file as its filming day sees it: the segments and ties of all episodes of the day as one episode's, in the order
 * of the day, called by all their titles. A title that two of the episodes have gets its episode's beside it, on
 * segments, steps and lots alike. The same from whichever of the episodes' files it is made, but for segments that
 * are not filmed on the day.
 *
 * Law: a file of one episode is given back as it is; so is what this gives.
 * @example filmedTogether(file).episode.title // 'Oat week + Quick suppers'
 */
export function filmedTogether(file: DayFile): DayFile {
  const { also, day, ...rest } = file;
  if (also === undefined || also.length === 0 || day === null) return file;
  const parts = inDayOrder([file.episode, ...also], day.segments);
  const onDay = new Set(day.segments.map(({ segmentId }) => segmentId));
  const twice = titlesOfSeveral(parts, onDay);
  return {
    ...rest,
    day,
    episode: {
      ...file.episode,
      title: parts.map(({ title }) => title).join(' + '),
      segments: parts.flatMap(({ title, segments }) =>
        segments.map((segment) => told(segment, title, twice)),
      ),
      links: parts.flatMap(({ links }) => links),
    },
    foods: [...file.foods, ...also.flatMap(({ foods }) => foods)],
    recipes: [...file.recipes, ...also.flatMap(({ recipes }) => recipes)],
    stock: [...file.stock, ...also.flatMap(({ stock }) => stock)],
    packs: [...file.packs, ...also.flatMap(({ packs }) => packs)],
  };
}

/** The file without the other episodes of its day: what a lock keeps and what is compared. */
export function filmedAlone(file: EpisodeFile): EpisodeFile {
  if (file.also === undefined) return file;
  const { also: _, day, ...rest } = file;
  const segments = new Set(file.episode.segments.map(({ id }) => id));
  const steps = new Set(file.episode.segments.flatMap((each) => each.steps.map(({ id }) => id)));
  return {
    ...rest,
    day: day && {
      ...day,
      segments: day.segments.filter(({ segmentId }) => segments.has(segmentId)),
      pins: day.pins.filter(({ stepId }) => steps.has(stepId)),
    },
  };
}

/** Episodes by their first segment on the day; one that has none on it comes last. */
function inDayOrder(
  parts: readonly Part[],
  onDay: readonly { readonly segmentId: string }[],
): readonly Part[] {
  const first = ({ segments }: Part): number => {
    const own = new Set(segments.map(({ id }) => id));
    const at = onDay.findIndex(({ segmentId }) => own.has(segmentId));
    return at < 0 ? onDay.length : at;
  };
  return [...parts].sort((a, b) => first(a) - first(b) || (a.id < b.id ? -1 : 1));
}

interface Titles {
  readonly segments: ReadonlySet<string>;
  readonly steps: ReadonlySet<string>;
  readonly lots: ReadonlySet<string>;
}

const key = (title: string): string => title.trim().toLowerCase();

/** Titles that more than one of the episodes has on the day. */
function titlesOfSeveral(parts: readonly Part[], onDay: ReadonlySet<string>): Titles {
  const filmed = parts.map(({ segments }) => segments.filter(({ id }) => onDay.has(id)));
  const several = (titles: (segment: Segment) => readonly string[]): Set<string> => {
    const seen = new Set<string>();
    const twice = new Set<string>();
    for (const segments of filmed) {
      const own = new Set(segments.flatMap(titles).map(key));
      for (const title of own) (seen.has(title) ? twice : seen).add(title);
    }
    return twice;
  };
  return {
    segments: several(({ title }) => [title]),
    steps: several(({ steps }) => steps.map(({ title }) => title)),
    lots: several(({ perishables }) => perishables.map(({ name }) => name)),
  };
}

function told(segment: Segment, episode: string, twice: Titles): Segment {
  const beside = (title: string, of: ReadonlySet<string>): string =>
    of.has(key(title)) ? `${title} (${episode})` : title;
  return {
    ...segment,
    title: beside(segment.title, twice.segments),
    steps: segment.steps.map((step) => ({ ...step, title: beside(step.title, twice.steps) })),
    perishables: segment.perishables.map((lot) => ({ ...lot, name: beside(lot.name, twice.lots) })),
  };
}
