import type { Dish } from '#lib/episode/context';
import type { SaidLine, SaidScope } from '#lib/episode/said-line';
import { scopeKey } from '#lib/episode/said-scope';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { sayDay, sayLines, saySoFar, type SayLine } from '#lib/figures/say-line';
import { spokenNumbers } from '#lib/figures/spoken-numbers';

/** A line to say, and what is to be known before it is said. */
export interface DaySay {
  readonly scope: SaidScope;
  /** What it is about: "All of it", "One of 4", "The day so far". */
  readonly about: string;
  readonly line: SayLine;
  /** What was said of it cannot add up with the other numbers that were said. */
  readonly clashes: boolean;
}

/** Lines of a file; each keeps to what was said of all others, not to what was said of itself. */
export function saysOf(
  file: EpisodeFile,
  said: readonly SaidLine[],
  upTo: string | null = null,
  figures: EpisodeFigures = episodeFigures(file),
) {
  const numbersWith = (lines: readonly SaidLine[]) =>
    publishedNumbers(file, figures, { energyStep: 1, spoken: spokenNumbers(lines, upTo) });
  const all = numbersWith(said);
  const without = new Map<string, ReturnType<typeof confirmedOnly>>();
  const numbersFor = (scope: SaidScope) => {
    const key = said.some((one) => scopeKey(one.scope) === scopeKey(scope)) ? scopeKey(scope) : '';
    const others = said.filter((one) => scopeKey(one.scope) !== key);
    const numbers = without.get(key) ?? confirmedOnly(key === '' ? all : numbersWith(others));
    without.set(key, numbers);
    return numbers;
  };
  const clashes = (scope: SaidScope): boolean => {
    const stands = said.find((one) => scopeKey(one.scope) === scopeKey(scope));
    const spoken = stands ? spokenNumbers([stands], upTo) : [];
    return spoken.some((one) => all(one.nutrient, one.scope).clashes);
  };
  const say = (scope: SaidScope, about: string, line: SayLine): DaySay => {
    return { scope, about, line, clashes: clashes(scope) };
  };
  return {
    ofDish(dish: Dish): DaySay[] {
      const own = figures.dishes.find(({ segmentId }) => segmentId === dish.id);
      if (!own) return [];
      const { portions } = dish.recipe;
      return scopesOf(dish).flatMap(({ scope, about, key }) => {
        const lines = sayLines(own, portions, figures, numbersFor(scope));
        const found = lines.find((each) => each.key === key);
        return found ? [say(scope, about, found.line)] : [];
      });
    },
    ofDay(): DaySay {
      const scope = { kind: 'day' } as const;
      return say(scope, 'The day', sayDay(figures, numbersFor(scope)));
    },
    ofDayTo(segmentId: string): DaySay {
      const scope = { kind: 'soFar', segmentId } as const;
      return say(scope, 'The day so far', saySoFar(figures, numbersFor(scope)));
    },
  };
}

const oneOf = (of: number) => (of === 2 ? 'Half, one of 2' : `One of ${of}`);

/** The scopes of a dish, with the keys of their lines. */
function scopesOf({ id, recipe }: Dish) {
  const portions = recipe.portions.map((portion) => ({
    scope: { kind: 'portion', segmentId: id, portionId: portion.id } as const,
    about:
      portion.kind === 'count'
        ? oneOf(portion.of)
        : portion.name === ''
          ? 'A portion'
          : portion.name,
    key: portion.id,
  }));
  return [
    { scope: { kind: 'whole', segmentId: id } as const, about: 'All of it', key: `whole-${id}` },
    { scope: { kind: 'half', segmentId: id } as const, about: 'Half of it', key: `half-${id}` },
    ...portions,
  ];
}

/** The line of the day with the dishes up to and with one, in running order. */
export function sayOfDayTo(
  file: EpisodeFile,
  segmentId: string,
  said: readonly SaidLine[],
): DaySay {
  const { segments } = file.episode;
  const upTo = segments.slice(0, segments.findIndex(({ id }) => id === segmentId) + 1);
  const short = { ...file, episode: { ...file.episode, segments: upTo, targets: [] } };
  return saysOf(short, said, segmentId).ofDayTo(segmentId);
}
