import { availableParallelism, loadavg } from 'node:os';
import { dishesOf } from '#lib/episode/context';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { keptDish } from '#lib/figures/compiled/compiled-lines';
import { arrangeTogether } from '#lib/figures/compiled/arrangement';
import { takeBounds } from '#lib/figures/compiled/figures';
import { memoryOf } from '#lib/figures/compiled/memory';
import { pack } from '#lib/figures/compiled/packing';
import { panelOf } from '#lib/figures/compiled/panel';
import { sumUp, type Sums } from '#lib/figures/compiled/sums';
import { sumTogether } from '#lib/figures/compiled/sums-together';
import {
  episodeFigures,
  type DishFigures,
  type EpisodeFigures,
} from '#lib/figures/episode-figures';
import { byTerms } from '#lib/figures/reckoning';
import { cellInterval } from '#lib/foods/label-rounding';
import { NUTRIENT_NAMES } from '#lib/foods/nutrients';
import { largeEpisode } from '../support/large-episode';
import { ms, quantile, timed } from './timing';

const ROUNDS = 300;
/** Of an edit, which is over before the machine has seen enough of it to be warm. */
const EDITS = 1500;
/** Bounds beside the bare sum; an episode with all working; one with an edited line. */
const MOST_TIMES = 6;
const MOST_MS = { whole: 2, edited: 0.2 } as const;

/**
 * All figures of an invented episode of 12 dishes with 25 ingredients each, in all nutrients, with both bounds and
 * working: beside a bare sum of products over the same numbers, turn by turn in one run. Foods are compiled and loops
 * are warm. A set of figures is worked out when it is first read, so every row says what is new in a turn and what
 * of it is read: `all read` reads every set of every dish, portion, ingredient and of the day; `the day read` is what
 * a page that shows the day's numbers waits for. Ingredients that are the same objects keep what they came to.
 *
 * What an edit changes is its ingredient, its dish (whole, per 100 g, eaten, portions) and the day: `its dish and the
 * day read` reads these, with the rows of all ingredients of that dish. The other dishes are the very objects that were
 * read before the edit, which `all read` reads once more.
 */
export async function run(): Promise<void> {
  const file = largeEpisode();
  const [bare, bounds] = await turnByTurn(bareSum(file), boundsAlone(file), ROUNDS);
  const rows = {
    'bare sum of products': bare,
    'bounds without working': bounds,
    'whole episode, its dishes new, all read': await times(() => newDishes(file)),
    'whole episode, its dishes new, the day read': await times(() => newDishes(file), readDay),
    'one line with other grams, its dish and the day read': await times(
      editor(file, otherGrams),
      readWhatIsNew(),
      EDITS,
    ),
    'one line with other grams, all read': await times(editor(file, otherGrams), readAll, EDITS),
    'one line with other grams, the day read': await times(
      editor(file, otherGrams),
      readDay,
      EDITS,
    ),
    'one line of another food, all read': await times(editor(file, otherFood)),
    'whole episode, every object new, all read': await times(
      () => structuredClone(file),
      readAll,
      ROUNDS / 30,
    ),
    'by terms, all read': [
      (await timed(() => readAll(episodeFigures(file, NUTRIENT_NAMES, byTerms)))).ms,
    ],
  };
  const busy = `${loadavg()[0]?.toFixed(1)} busy on ${availableParallelism()} processors`;
  console.info(
    `${file.episode.segments.length} dishes, ${NUTRIENT_NAMES.length} nutrients; in the last minute ${busy}`,
  );
  console.table(
    Object.fromEntries(
      Object.entries(rows).map(([name, samples]) => [
        name,
        {
          'least ms': ms(Math.min(...samples)),
          'median ms': ms(quantile(samples, 0.5)),
          'p95 ms': ms(quantile(samples, 0.95)),
        },
      ]),
    ),
  );
  const ratio = quantile(bounds, 0.5) / quantile(bare, 0.5);
  tell('bounds beside the bare sum', ratio, MOST_TIMES, 'times');
  const whole = quantile(rows['whole episode, its dishes new, all read'], 0.5);
  tell('whole episode with working', whole, MOST_MS.whole, 'ms');
  for (const read of ['its dish and the day read', 'all read'] as const) {
    const edited = quantile(rows[`one line with other grams, ${read}`], 0.5);
    tell(`one edited line, ${read}`, edited, MOST_MS.edited, 'ms');
  }
}

function tell(what: string, found: number, most: number, unit: string): void {
  const verdict = found <= most ? 'within' : 'OVER';
  console.info(`${what}: ${found.toPrecision(3)} ${unit}, ${verdict} the ${most} aimed at`);
}

/** Milligrams eaten times the value per 100 g, as everybody adds up labels; no bounds, no blanks, no sources. */
function bareSum(file: EpisodeFile): () => unknown {
  const foods = new Map(
    file.foods.map(({ id, version }) => [
      id,
      NUTRIENT_NAMES.map((nutrient) => cellInterval(version, nutrient)?.value ?? 0),
    ]),
  );
  const dishes = episodeFigures(file, NUTRIENT_NAMES).dishes.map(({ lines }) =>
    lines.map(({ foodId, eatenMg }) => ({
      grams: (eatenMg?.value ?? 0) / 1000,
      values: foods.get(foodId ?? '') ?? [],
    })),
  );
  return () => {
    const day = new Float64Array(NUTRIENT_NAMES.length);
    const sums = dishes.map((lines) => {
      const sum = new Float64Array(NUTRIENT_NAMES.length);
      for (const { grams, values } of lines) {
        for (let place = 0; place < sum.length; place += 1) {
          sum[place] = (sum[place] ?? 0) + (grams * (values[place] ?? 0)) / 100;
        }
      }
      for (let place = 0; place < sum.length; place += 1) {
        day[place] = (day[place] ?? 0) + (sum[place] ?? 0) / 2;
      }
      return sum;
    });
    return { sums, day };
  };
}

/** Hard and likely bounds of every dish and of the day, from compiled ingredients. */
function boundsAlone(file: EpisodeFile): () => unknown {
  const panel = panelOf(file.episode.region, NUTRIENT_NAMES);
  const memory = memoryOf(file, panel);
  const dishes = dishesOf(file.episode.segments).map((dish) => {
    const { sum } = keptDish(dish, memory.context, memory);
    const entries = sum.summands.flatMap(({ products }) => products);
    return { packed: pack(entries), arrangement: sum.whole().arrangement };
  });
  const together = arrangeTogether(
    dishes.map(({ arrangement }) => arrangement),
    NUTRIENT_NAMES.length,
  );
  const half = dishes.map(() => 1 / 2);
  return () => {
    const sums = dishes.map(({ arrangement, packed }) => known(sumUp(arrangement, packed)));
    const day = known(sumTogether(together, sums, half));
    return [...sums, day].map((each) => takeBounds(each, 1));
  };
}

function known(sums: Sums | null): Sums {
  if (!sums) throw new Error('a sum of the bench is asked by terms');
  return sums;
}

async function turnByTurn(a: () => unknown, b: () => unknown, rounds: number) {
  const samples: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds * 2; round += 1) {
    const [first, second] = [await timed(a), await timed(b)];
    if (round < rounds) continue;
    samples[0].push(first.ms);
    samples[1].push(second.ms);
  }
  return samples;
}

/** Times all figures of one file after the other, the first half of them not counted. */
async function times(
  next: () => EpisodeFile,
  read: (figures: EpisodeFigures) => number = readAll,
  rounds = ROUNDS,
): Promise<number[]> {
  const samples: number[] = [];
  for (let round = 0; round < rounds * 2; round += 1) {
    const file = next();
    const { ms: took, value } = await timed(() => read(episodeFigures(file, NUTRIENT_NAMES)));
    if (round >= rounds) samples.push(took);
    if (value === 0) throw new Error('no working');
  }
  return samples;
}

/** Reads every set of figures; the sum of one of each keeps the reading from being left out. */
function readAll({ day, dishes }: Pick<EpisodeFigures, 'day' | 'dishes'>): number {
  const sets = dishes.flatMap(({ whole, per100g, eaten, portions, lines }) => [
    whole,
    per100g,
    eaten,
    ...portions.map(({ figures }) => figures),
    ...lines.map(({ figures }) => figures),
  ]);
  return [day, ...sets].reduce((sum, set) => sum + (set?.protein?.value ?? 0), 0);
}

/** Reads every set of the day and of the dishes that are not the objects they were at the reading before. */
function readWhatIsNew(): (figures: EpisodeFigures) => number {
  let before: readonly DishFigures[] = [];
  return (figures) => {
    const dishes = figures.dishes.filter((dish, at) => dish !== before[at]);
    before = figures.dishes;
    return readAll({ day: figures.day, dishes });
  };
}

function readDay({ day }: EpisodeFigures): number {
  return day.protein?.value ?? 0;
}

function newDishes(file: EpisodeFile): EpisodeFile {
  const segments = file.episode.segments.map((segment) => ({
    ...segment,
    recipe: segment.recipe && { ...segment.recipe, lines: [...segment.recipe.lines] },
  }));
  return { ...file, episode: { ...file.episode, segments } };
}

/** Edits one line after the other, dish by dish, each time of the file that the last edit left. */
function editor(
  first: EpisodeFile,
  edit: (line: RecipeLine, turn: number, file: EpisodeFile) => RecipeLine,
): () => EpisodeFile {
  let file = first;
  let turn = 0;
  return () => {
    turn += 1;
    const which = turn % file.episode.segments.length;
    const segments = file.episode.segments.map((segment, index) => {
      const { recipe } = segment;
      if (index !== which || !recipe) return segment;
      const weighed = recipe.weighings.flatMap(({ shares }) => shares.map(({ lineId }) => lineId));
      const typed = recipe.lines.filter(({ id, planned }) => planned && !weighed.includes(id));
      const chosen = typed[turn % typed.length];
      const lines = recipe.lines.map((line) => (line === chosen ? edit(line, turn, file) : line));
      return { ...segment, recipe: { ...recipe, lines } };
    });
    file = { ...file, episode: { ...file.episode, segments } };
    return file;
  };
}

function otherGrams(line: RecipeLine, turn: number): RecipeLine {
  const mg = 100_000 + turn;
  return { ...line, planned: { lowMg: mg, valueMg: mg, highMg: mg } };
}

function otherFood(line: RecipeLine, turn: number, { foods }: EpisodeFile): RecipeLine {
  return { ...line, state: 'asIs', foodId: foods[turn % foods.length]?.id ?? null };
}
