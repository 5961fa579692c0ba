import type { AlsoFilmed, EpisodeFile } from '#lib/episode/schema';

/** The id and title of the episode that `asTwo` makes of the later segments. */
export const SECOND = { id: 'second-episode', title: 'A second episode' } as const;

/**
 * The same day as a day of two episodes: every second segment of the day, in its order, becomes another episode's.
 * Ties between the two are left out, so whatever keeps the rules of the one day keeps those of the two.
 */
export function asTwo(file: EpisodeFile): EpisodeFile {
  const { episode, day } = file;
  const onDay = [...new Set(day?.segments.map(({ segmentId }) => segmentId))];
  const moved = new Set(onDay.filter((_, at) => at % 2 === 1));
  const theirs = episode.segments.filter(({ id }) => moved.has(id));
  const own = episode.segments.filter(({ id }) => !moved.has(id));
  const steps = new Set(theirs.flatMap((each) => each.steps.map(({ id }) => id)));
  const isTheirs = (id: string): boolean => steps.has(id);
  const spansWithin = (segments: typeof own): typeof own =>
    segments.map((segment) => ({
      ...segment,
      perishables: segment.perishables.map((lot) => ({
        ...lot,
        spans: lot.spans.filter((span) => isTheirs(span.fromStepId) === isTheirs(span.toStepId)),
      })),
    }));
  const links = (within: boolean) =>
    episode.links.filter(
      ({ fromStepId, toStepId }) =>
        isTheirs(fromStepId) === within && isTheirs(toStepId) === within,
    );
  const second: AlsoFilmed = {
    ...SECOND,
    region: episode.region,
    segments: spansWithin(theirs),
    links: links(true),
    foods: [],
    recipes: [],
    stock: [],
    packs: [],
  };
  return {
    ...file,
    episode: { ...episode, segments: spansWithin(own), links: links(false) },
    also: [second],
  };
}

/** The same day seen from the file of its second episode. */
export function fromTheOther(file: EpisodeFile): EpisodeFile {
  const { also, episode } = file;
  const [other] = also ?? [];
  if (other === undefined) throw new Error('The day has one episode alone');
  const onDay = new Set(file.day?.segments.map(({ segmentId }) => segmentId));
  const { id, title, region, segments, links } = other;
  const filmed = episode.segments.filter((segment) => onDay.has(segment.id));
  const steps = new Set(filmed.flatMap((each) => each.steps.map((step) => step.id)));
  return {
    ...file,
    foods: [...file.foods, ...other.foods],
    episode: { ...episode, id, title, region, segments, links, targets: [] },
    also: [
      {
        id: episode.id,
        title: episode.title,
        region: episode.region,
        segments: filmed,
        links: episode.links.filter((l) => steps.has(l.fromStepId) && steps.has(l.toStepId)),
        foods: [],
        recipes: [],
        stock: [],
        packs: [],
      },
    ],
  };
}
