import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import type { ExactAnswer, ExactProblem } from '#lib/planner/exact/problem';
import { solve } from '#lib/planner/exact/solve';
import { readProblem } from '#lib/planner/read-problem';
import { brokenRules, costOf } from '../planner/exact-checker';
import { DATA, instancesIn, type Instance } from '../planner/planner-data';
import { randomDay } from '../planner/random-days';
import { byMip, byRules, type Peered } from './planner-peers';
import { ms, quantile } from './timing';

/** Sizes and number of made-up days; instances of a set on which the rule-based planner is tried too. */
const DAY_SIZES = [36, 60, 90, 120];
const DAYS = 20;
const PEERED = 5;

/** Milliseconds between two questions for the processor time, which is a slow call of the system. */
const ASK_EVERY = 4;

/** Processor time of this program in milliseconds: what others do on the machine is not the engine's. */
function processor(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Whether so many milliseconds of processor time are over since now, to be asked as often as one likes. */
function clockOf(limit: number): () => boolean {
  const begun = processor();
  let asked = performance.now();
  let over = false;
  return () => {
    const now = performance.now();
    if (over || now - asked < ASK_EVERY) return over;
    asked = now;
    over = processor() - begun > limit;
    return over;
  };
}

interface Row {
  readonly name: string;
  readonly answer: ExactAnswer;
  readonly took: number;
  readonly fault: string | null;
}

/**
 * `npm run bench -- planner [--data DIR] [--limit SECONDS] [--set NAME]`: how many instances of each set are
 * proven within the limit of processor time, how long it took, and what is wrong: plans that the checker
 * refuses, proofs that differ from the reference, also those of peers on a few of each set. Exit code 1 if anything is wrong.
 */
export async function run(): Promise<void> {
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: {
      data: { type: 'string', default: DATA },
      limit: { type: 'string', default: '1' },
      set: { type: 'string' },
    },
  });
  const limit = Number(values.limit) * 1000;
  if (!(limit > 0)) throw new Error(`--limit takes seconds above 0, not "${values.limit}"`);
  const load = loadavg().map((one) => one.toFixed(1));
  console.log(
    `limit ${values.limit} s of processor time, one thread; load of the machine ${load.join(' ')}`,
  );
  const instances = instancesIn(values.data);
  if (instances.length === 0) console.log(`no published sets in ${values.data}`);
  let wrong = 0;
  for (const set of new Set(instances.map((instance) => instance.set))) {
    if (values.set !== undefined && values.set !== set) continue;
    const rows = instances
      .filter((instance) => instance.set === set)
      .map((instance) => {
        const read = readProblem(instance.path, readFileSync(instance.path, 'utf8'));
        if (!read.ok) throw new Error(`${instance.path}: ${read.problems[0]?.message}`);
        return [instance, read.value] as const;
      });
    wrong += report(
      set,
      rows.map(([instance, problem]) => solved(instance.name, problem, limit, instance.known)),
    );
    const step = Math.max(1, Math.floor(rows.length / PEERED));
    const sample = rows
      .filter((_, index) => index % step === 0)
      .slice(0, PEERED)
      .map(([{ name, known }, problem]): Peered => ({ name, problem, known }));
    byRules(sample);
    wrong += await byMip(sample, limit / 1000);
  }
  for (const size of DAY_SIZES) {
    if (values.set !== undefined && values.set !== 'random-days') continue;
    const days = Array.from({ length: DAYS }, (_, seed) =>
      solved(`day ${size}/${seed}`, randomDay(size, seed + 1), limit, null),
    );
    wrong += report(`days of ${size}`, days);
  }
  console.log('CP-SAT is asked by npm run bench -- oracle, where it is installed apart');
  if (wrong > 0) process.exitCode = 1;
}

function solved(
  name: string,
  problem: ExactProblem,
  limit: number,
  known: Instance['known'] | null,
): Row {
  const begun = processor();
  const answer = solve(problem, { seed: 1, shouldStop: clockOf(limit) });
  const took = processor() - begun;
  return { name, answer, took, fault: faultOf(problem, answer, known) };
}

/** What is wrong with an answer; null if nothing is. */
function faultOf(
  problem: ExactProblem,
  answer: ExactAnswer,
  known: Instance['known'] | null,
): string | null {
  const [goal] = problem.goals;
  const { best = null, bound = null } = answer.goals[0] ?? {};
  if (answer.plan !== null && goal !== undefined) {
    const [broken] = brokenRules(problem, answer.plan);
    if (broken !== undefined) return `plan breaks "${broken}"`;
    if (costOf(goal, answer.plan) !== best) return 'plan has another value than told';
  }
  if (known === null) return null;
  if (known === 'infeasible') return answer.plan === null ? null : 'a plan where there is none';
  const { lower, upper } = typeof known === 'number' ? { lower: known, upper: known } : known;
  if (answer.status === 'infeasible') return `infeasible, but ${upper} is known`;
  if (best !== null && best < lower) return `${best} is below ${lower}`;
  if (bound !== null && bound > upper) return `bound ${bound} is above ${upper}`;
  return null;
}

function report(set: string, rows: readonly Row[]): number {
  const ended = rows.filter(({ answer: { status } }) => ['proven', 'infeasible'].includes(status));
  const times = rows.map(({ took }) => took);
  const conflicts = rows.reduce((sum, { answer }) => sum + answer.statistics.conflicts, 0);
  const wrong = rows.filter(({ fault }) => fault !== null);
  console.log(
    [
      set.padEnd(12),
      `proven ${ended.length} of ${rows.length}`,
      `wrong ${wrong.length}`,
      `median ${ms(quantile(times, 0.5))} ms`,
      `p95 ${ms(quantile(times, 0.95))} ms`,
      `max ${ms(Math.max(...times))} ms`,
      `conflicts ${conflicts}`,
    ].join('  '),
  );
  for (const { name, fault } of wrong) console.log(`  WRONG ${name}: ${fault}`);
  const open = rows.filter((row) => !ended.includes(row));
  for (const { name, answer } of open) {
    const { best = null, bound = null } = answer.goals[0] ?? {};
    console.log(`  open ${name}: ${bound ?? '-'} to ${best ?? '-'}`);
  }
  return wrong.length;
}
