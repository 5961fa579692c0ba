import type { Problem } from '#lib/result';
import { recipesOf } from '#lib/episode/context';
import type { AlsoFilmed, EpisodeFile } from '#lib/episode/schema';

/** The faults of a file as if no other episode were filmed on its day. */
type Own = (file: EpisodeFile) => readonly Problem[];

/** Faults that lie in the whole and not at one place of it. */
const OF_ALL: ReadonlySet<string> = new Set(['duplicate-id', 'ring']);

/**
 * The faults of the other episodes of a file's day: each of their own, with its path under `also`; ids that two
 * episodes have; the same episode twice; segments that the day does not film; episodes of no day.
 */
export function alsoProblems(file: EpisodeFile, own: Own): Problem[] {
  const { also, day, episode } = file;
  if (also === undefined) return [];
  const all = withAll(file, also);
  const alone = new Set(own(file).map(({ message }) => message));
  const problems: Problem[] = own(all)
    .filter(({ code, message }) => OF_ALL.has(code) && !alone.has(message))
    .map((problem) => ({ ...problem, path: 'also' }));
  if (day === null) {
    const message = 'there is no filming day that these episodes could be filmed on';
    problems.push({ path: 'also', code: 'no-day', message });
  }
  const onDay = new Set(day?.segments.map(({ segmentId }) => segmentId));
  const seen = new Set([episode.id]);
  also.forEach((other, index) => {
    const path = `also[${index}]`;
    if (seen.has(other.id)) {
      const message = `the episode "${other.title}" is on this day already`;
      problems.push({ path: `${path}.id`, code: 'duplicate-id', message });
    }
    seen.add(other.id);
    problems.push(...ofOther(all, other, own).map((one) => ({ ...one, path: path + one.path })));
    other.segments.forEach(({ id, title }, at) => {
      if (day === null || onDay.has(id)) return;
      const message = `"${title}" is not filmed on this day: leave it out, or add it to the day`;
      problems.push({ path: `${path}.segments[${at}]`, code: 'not-on-day', message });
    });
  });
  return problems;
}

/** Ids of the segments and steps that the other episodes of the day have. */
export function idsOfOthers({ also = [] }: Pick<EpisodeFile, 'also'>): {
  readonly segments: readonly string[];
  readonly steps: readonly string[];
} {
  const segments = also.flatMap((other) => other.segments);
  return {
    segments: segments.map(({ id }) => id),
    steps: segments.flatMap(({ steps }) => steps.map(({ id }) => id)),
  };
}

/** All that a file and the other episodes of its day have, as one episode's file. */
function withAll({ also: _, ...file }: EpisodeFile, also: readonly AlsoFilmed[]): EpisodeFile {
  const { episode } = file;
  const theirs = also.flatMap(({ segments }) => segments);
  const dishes = new Set(theirs.map(({ recipe }) => recipe?.id));
  return {
    ...file,
    episode: {
      ...episode,
      segments: [...episode.segments, ...theirs],
      links: [...episode.links, ...also.flatMap(({ links }) => links)],
    },
    foods: [...file.foods, ...also.flatMap(({ foods }) => foods)],
    recipes: [
      // An own dish may be made from another episode's, which is then told twice.
      ...file.recipes.filter(({ id }) => !dishes.has(id)),
      ...also.flatMap(({ recipes }) => recipes),
    ],
  };
}

/** The faults of one of the others, with paths from it on: `.segments[0].steps[2].oven.ovenId`. */
function ofOther(all: EpisodeFile, other: AlsoFilmed, own: Own): Problem[] {
  const { segments, links, recipes, stock, packs } = other;
  const its = new Set(recipesOf({ episode: { ...all.episode, segments }, recipes }));
  const beside = recipesOf(all).filter((recipe) => !its.has(recipe));
  const file = {
    ...all,
    episode: { ...all.episode, segments, links, targets: [] },
    recipes: [...recipes, ...beside],
    stock,
    packs,
    day: null,
  };
  return own(file).flatMap((problem) => {
    const [, part = '', at = ''] =
      /^(?:episode\.)?(segments|links|recipes|stock|packs)\[(\d+)\]/.exec(problem.path) ?? [];
    const elsewhere = part === '' || (part === 'recipes' && Number(at) >= recipes.length);
    if (elsewhere || OF_ALL.has(problem.code)) return [];
    return [{ ...problem, path: `.${problem.path.replace(/^episode\./, '')}` }];
  });
}
