import { parseArgs } from 'node:util';
import type { EpisodeFile } from '#lib/episode/schema';
import { planExactly } from '#lib/planner/plan-exactly';
import type { Placed } from '#lib/planner/problem';
import { dayFacts } from '#lib/shoot/day-facts';
import { DAY_LEVELS, withDayGoals } from '#lib/shoot/day-goals';
import { ovenSteps } from '#lib/shoot/oven-choice';
import type { PlanProof } from '#lib/shoot/plan';
import { dayPlan } from '#lib/shoot/plan-day';
import { firstDay, solveByRules } from '#lib/shoot/solve-day';
import { toProblem } from '#lib/shoot/to-problem';
import { checkPlan } from '../shoot/checker';
import { demoFile } from '../ui/page-support';
import { madeDay, type DaySize } from './day-made';
import { ms, quantile } from './timing';

const KINDS = ['asLived', 'packed'] as const;
const SIX_DISHES: DaySize = { dishes: 6, meals: 3, mealGapMin: 180 };
const TWO_EPISODES: DaySize = { dishes: 10, meals: 4, mealGapMin: 150 };
/** A plan is good once it is over no later than so much above what is proven. */
const NEAR = 1.02;
const LAST_LEVEL = DAY_LEVELS.length - 1;

/** What is aimed at, in milliseconds; the median where there are several days. */
const AIMS = { first: 50, demoProven: 300, sixDishesProven: 2000 } as const;

/** Milliseconds of processor time since the beginning; infinite where it was not reached within the limit. */
interface Measured {
  readonly tasks: number;
  readonly first: number;
  readonly near: number;
  readonly wrapProven: number;
  /** Wrap, minutes unchilled and ovens: all levels but the last, how often segments change. */
  readonly foodProven: number;
  readonly proven: number;
  /** Minutes from the day's start to its wrap, and how many the plan by rules takes more. */
  readonly minutes: number;
  readonly saved: number;
  readonly faults: readonly string[];
}

/**
 * `npm run bench -- day [--limit SECONDS] [--days N]`: the demo's day, made-up days of six dishes and days as long
 * as two episodes, as lived and packed. Times are of this program's processor, so what others do on the machine is
 * not the planner's. A plan that the checker refuses is told, and the exit code is 1.
 */
export async function run(): Promise<void> {
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: {
      limit: { type: 'string', default: '10' },
      days: { type: 'string', default: '5' },
    },
  });
  const limit = Number(values.limit);
  const count = Number(values.days);
  if (!(limit > 0 && Number.isInteger(count) && count > 0)) {
    throw new Error('--limit takes seconds above 0, --days a whole number above 0');
  }
  const seeds = Array.from({ length: count }, (_, index) => index + 1);
  const demo = demoFile();
  // Nothing is compiled the first time that it counts.
  measure(madeDay(demo, SIX_DISHES, 'packed', 1000), 1);
  const sets = KINDS.flatMap((kind) => [
    { name: 'demo', kind, files: [ofKind(demo, kind)] },
    { name: 'six dishes', kind, files: seeds.map((one) => madeDay(demo, SIX_DISHES, kind, one)) },
    {
      name: 'two episodes',
      kind,
      files: seeds.map((one) => madeDay(demo, TWO_EPISODES, kind, one)),
    },
  ]);
  const measured = sets.map(({ files, ...set }) => ({
    ...set,
    days: files.map((file) => measure(file, limit)),
  }));
  console.info(`at most ${limit} s of processor time a day; medians, the slowest in brackets`);
  console.table(Object.fromEntries(measured.map((set) => [`${set.name}, ${set.kind}`, row(set)])));
  tellAims(measured);
  const faults = measured.flatMap(({ days }) => days.flatMap((day) => day.faults));
  for (const fault of faults) console.info(`WRONG ${fault}`);
  if (faults.length > 0) process.exitCode = 1;
}

type Set = { readonly name: string; readonly kind: string; readonly days: readonly Measured[] };

function row({ days }: Set): Record<string, string | number> {
  const both = (of: (day: Measured) => number) => {
    const times = days.map(of);
    const slowest = days.length > 1 ? ` (${told(Math.max(...times))})` : '';
    return `${told(quantile(times, 0.5))}${slowest}`;
  };
  const proven = (of: (day: Measured) => number) =>
    `${days.filter((day) => of(day) < Infinity).length} of ${days.length}`;
  return {
    tasks: quantile(
      days.map(({ tasks }) => tasks),
      0.5,
    ),
    'first, ms': both(({ first }) => first),
    'within 2 %, ms': both(({ near }) => near),
    'wrap proven, ms': both(({ wrapProven }) => wrapProven),
    'wrap proven': proven((day) => day.wrapProven),
    'all but switches proven, ms': both(({ foodProven }) => foodProven),
    'all but switches': proven((day) => day.foodProven),
    'all proven, ms': both((day) => day.proven),
    'all proven': proven((day) => day.proven),
    'day, min': quantile(
      days.map(({ minutes }) => minutes),
      0.5,
    ),
    'shorter than by rules, min': `${Math.min(...days.map(({ saved }) => saved))} to ${Math.max(...days.map(({ saved }) => saved))}`,
  };
}

function tellAims(measured: readonly Set[]): void {
  const all = measured.flatMap(({ days }) => days);
  const median = (name: string, of: (day: Measured) => number) =>
    quantile(
      measured.filter((set) => set.name === name).flatMap(({ days }) => days.map(of)),
      0.5,
    );
  const aims = [
    [
      'a first plan, median of all days',
      quantile(
        all.map(({ first }) => first),
        0.5,
      ),
      AIMS.first,
    ],
    [
      'the demo day proven, the slower kind',
      Math.max(
        ...measured
          .filter(({ name }) => name === 'demo')
          .map(({ days }) => days[0]?.proven ?? Infinity),
      ),
      AIMS.demoProven,
    ],
    ['six dishes proven, median', median('six dishes', (day) => day.proven), AIMS.sixDishesProven],
    [
      'six dishes, the wrap alone proven, median',
      median('six dishes', (day) => day.wrapProven),
      AIMS.sixDishesProven,
    ],
  ] as const;
  for (const [what, took, aim] of aims) {
    console.info(`${took <= aim ? 'met' : 'NOT MET'}: ${what}: ${told(took)} ms, aim ${aim} ms`);
  }
}

const told = (time: number): string => (time === Infinity ? 'not in time' : ms(time));

function ofKind(file: EpisodeFile, kind: (typeof KINDS)[number]): EpisodeFile {
  return file.day === null ? file : { ...file, day: { ...file.day, kind } };
}

/** Processor time of this program in milliseconds. */
function processor(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function measure(file: EpisodeFile, limitSeconds: number): Measured {
  const facts = dayFacts(file);
  const begun = processor();
  const since = () => processor() - begun;
  let first = firstDay(facts, 1).broken.length === 0 ? since() : Infinity;
  const rules = solveByRules(facts, 1);
  if (rules.broken.length === 0) first = Math.min(first, since());
  let near = Infinity;
  let wrapProven = Infinity;
  let wrapOver = Infinity;
  let lastBegun = Infinity;
  const { fixed, open } = ovenSteps(facts);
  const day = toProblem(facts, fixed, open);
  const problem = withDayGoals(day);
  const answer = planExactly(problem, {
    seed: 1,
    now: () => since() / 1000,
    limitSeconds,
    explain: false,
    ...(rules.broken.length === 0 && open.length === 0 ? { warmStart: rules.placed } : {}),
    onProgress: ({ level, best, bound, placed }) => {
      if (placed.length > 0) first = Math.min(first, since());
      if (level > 0) wrapOver = Math.min(wrapOver, since());
      if (level === LAST_LEVEL) lastBegun = Math.min(lastBegun, since());
      if (level > 0 || best === null || bound === null) return;
      if (best <= bound * NEAR) near = Math.min(near, since());
      if (best === bound) wrapProven = Math.min(wrapProven, since());
    },
  });
  const ended = since();
  const wrap = answer.levels[0];
  // What is known of the wrap at its end was known when the next level began.
  const over = Math.min(wrapOver, ended);
  const { value = null, bound = null } = wrap ?? {};
  if (value !== null && bound !== null && value <= bound * NEAR) near = Math.min(near, over);
  if (wrap?.status === 'proven') wrapProven = Math.min(wrapProven, over);
  const food = answer.levels.slice(0, LAST_LEVEL);
  const foodProven =
    food.length === LAST_LEVEL && food.every(({ status }) => status === 'proven')
      ? Math.min(lastBegun, ended)
      : Infinity;
  const { placed } = answer;
  const minutes = placed.length > 0 ? lastEnd(placed) : NaN;
  const proof: PlanProof = { status: 'gap', levels: [], clash: [] };
  const solved = { choice: fixed, placed, broken: [], originMin: day.originMin, proof };
  const faults = placed.length > 0 ? checkPlan(file, dayPlan(file, solved)) : ['no plan'];
  return {
    tasks: problem.tasks.length,
    first,
    near,
    wrapProven,
    foodProven,
    proven: answer.status === 'proven' ? ended : Infinity,
    minutes,
    saved: rules.broken.length > 0 ? NaN : lastEnd(rules.placed) - minutes,
    faults: faults.map((fault) => `${file.day?.id}: ${fault}`),
  };
}

const lastEnd = (placed: readonly Placed[]): number => Math.max(...placed.map(({ end }) => end));
