import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { planExactly } from '#lib/planner/plan-exactly';
import type { PlannerProblem } from '#lib/planner/problem';
import { wrongWith } from '../planner/face-checker';
import { faceProblems, type FaceFeatures } from '../planner/face-random';
import { cpSat } from './oracle/cp-sat';
import { byCpSat, canBeSaid } from './oracle/problem-in-cp-sat';
import { ms } from './timing';

/** One feature each, in more tasks than could be tried out in full. */
const FEATURES: readonly [string, FaceFeatures][] = [
  ['resources and windows', { windows: true }],
  ['lags with a greatest', { maxLags: true }],
  ['capacity that changes', { steps: true }],
  ['lengths of choice', { lengths: true }],
  ['optional tasks and choices', { optional: true, goals: ['leftOut', 'completion'] }],
  ['states', { states: 'plain' }],
  ['limits on sums of spans', { limits: true, maxLags: true }],
  ['spans, completion and lateness', { goals: ['span', 'completion', 'lateness'] }],
  ['the least change of an earlier plan', { goals: ['moved'] }],
];
const TASKS = 9;
/** Room enough for all of them one after another, with changes of state between. */
const HORIZON = 60;
/** Windows are made for fewer tasks. */
const ROOM = 3;

/**
 * `npm run bench -- oracle [--runs N]`: random problems of one feature each, planned by our engine and by CP-SAT
 * (Google OR-Tools 9, as WebAssembly), which must come to the same values in every level or both to none. CP-SAT
 * is installed apart: npm install --prefix tests/bench/oracle. Exit code 1 if a value differs.
 */
export async function run(): Promise<void> {
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: { runs: { type: 'string', default: '20' } },
  });
  const runs = Number(values.runs);
  if (!(Number.isInteger(runs) && runs > 0))
    throw new Error(`--runs takes a whole number above 0, not "${values.runs}"`);
  const cp = await cpSat();
  if (cp === null) {
    console.log('CP-SAT is absent: npm install --prefix tests/bench/oracle');
    return;
  }
  const table: Record<string, object> = {};
  let differing = 0;
  for (const [name, features] of FEATURES) {
    const problems = fc
      .sample(faceProblems({ ...features, tasks: TASKS }), { numRuns: runs, seed: 20_261_128 })
      .map((problem): PlannerProblem => ({
        ...problem,
        horizon: HORIZON,
        tasks: problem.tasks.map((task) => ({
          ...task,
          endBy: task.endBy === null ? null : task.endBy * ROOM,
        })),
      }))
      .filter(canBeSaid);
    const row = { problems: problems.length, 'no plan': 0, equal: 0, open: 0, ours: 0, theirs: 0 };
    for (const problem of problems) {
      const begun = performance.now();
      const answer = planExactly(problem, { seed: 1, explain: false });
      row.ours += performance.now() - begun;
      const ours = answer.status === 'infeasible' ? null : answer.levels.map(({ value }) => value);
      const wrong = ours === null ? [] : wrongWith(problem, answer);
      const asked = performance.now();
      const theirs = await byCpSat(cp, problem, 60);
      row.theirs += performance.now() - asked;
      if (theirs === 'not proven') row.open += 1;
      else if (JSON.stringify(ours) === JSON.stringify(theirs) && wrong.length === 0) {
        row.equal += 1;
        if (ours === null) row['no plan'] += 1;
      } else {
        differing += 1;
        console.log(`${name}: ours ${JSON.stringify(ours)}, CP-SAT ${JSON.stringify(theirs)}`);
        console.log(`  ${wrong.join('; ')} ${JSON.stringify(problem)}`);
      }
    }
    table[name] = { ...row, ours: `${ms(row.ours)} ms`, theirs: `${ms(row.theirs)} ms` };
  }
  console.table(table);
  console.log(`${differing} of them differ`);
  if (differing > 0) process.exitCode = 1;
  // The WebAssembly threads would keep the process alive.
  process.exit();
}
