import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { faultsOf } from '#lib/planner/exact/faults';
import type { ExactPlan, ExactProblem } from '#lib/planner/exact/problem';
import { readProblem } from '#lib/planner/read-problem';
import { planInThreads } from '#lib/work/plan-in-threads';

const USAGE = `Solves scheduling problems and says what is proven.

  npm run plan -- FILE… [--limit SECONDS] [--threads 1|2] [--seed N] [--plan]

  FILE       .sm (PSPLIB), .sch (ProGen/max), .txt or .jsp (job shop), .dzn (earliness and tardiness),
             .json (our own compact form)
  --limit    seconds for each file; 10 if left out
  --threads  2 works on plans and on the bound at the same time; 1 if left out
  --seed     a whole number; 1 if left out
  --plan     writes each task's start and end as well

One line a file: name, status, bound, value, milliseconds, conflicts; "-" where nothing is known.
Codes: 0 done, 1 a file could not be read, 2 the words are off.`;

/** Runs the command; returns the exit code. */
async function main(argv: readonly string[]): Promise<number> {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        limit: { type: 'string', default: '10' },
        threads: { type: 'string', default: '1' },
        seed: { type: 'string', default: '1' },
        plan: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    return fail(2, error instanceof Error ? error.message : String(error), USAGE);
  }
  const { values, positionals } = parsed;
  if (values.help) {
    console.log(USAGE);
    return 0;
  }
  if (positionals.length === 0) return fail(2, 'name at least one file', USAGE);
  const limit = Number(values.limit);
  if (!(limit > 0 && limit <= 86_400))
    return fail(2, `--limit takes seconds above 0, up to a day, not "${values.limit}"`);
  const threads = values.threads === '1' ? 1 : values.threads === '2' ? 2 : null;
  if (threads === null) return fail(2, `--threads takes 1 or 2, not "${values.threads}"`);
  const seed = Number(values.seed);
  if (!Number.isInteger(seed) || seed < 0 || seed >= 2 ** 31)
    return fail(2, `--seed takes a whole number, not "${values.seed}"`);

  let code = 0;
  for (const file of positionals) {
    const problem = load(file);
    if (problem === null) {
      code = 1;
      continue;
    }
    const begun = performance.now();
    const answer = await planInThreads(problem, seed, limit * 1000, threads);
    const took = Math.round(performance.now() - begun);
    const { best = null, bound = null } = answer.goals[0] ?? {};
    const cells = [answer.status, bound ?? '-', best ?? '-', took, answer.statistics.conflicts];
    console.log([path.basename(file), ...cells].join(' '));
    if (values.plan && answer.plan !== null) printPlan(problem, answer.plan);
  }
  return code;
}

function load(file: string): ExactProblem | null {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    console.error(`${file}: ${error instanceof Error ? error.message : String(error)}`);
    return null;
  }
  const read = readProblem(file, text);
  if (!read.ok) {
    for (const { message } of read.problems) console.error(`${file}: ${message}`);
    return null;
  }
  const faults = faultsOf(read.value);
  for (const fault of faults) console.error(`${file}: ${fault}`);
  return faults.length === 0 ? read.value : null;
}

function printPlan(problem: ExactProblem, plan: ExactPlan): void {
  problem.tasks.forEach(({ name }, task) => {
    console.log(`  ${name}: ${plan.starts[task]} to ${plan.ends[task]}`);
  });
}

function fail(code: number, ...lines: readonly string[]): number {
  for (const line of lines) console.error(line);
  return code;
}

// Whoever reads the lines may have enough of them before the end.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});
process.exitCode = await main(process.argv.slice(2));
