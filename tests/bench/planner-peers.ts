import loadHighs from 'highs';
import type { ExactProblem } from '#lib/planner/exact/problem';
import { planByRules } from '#lib/planner/plan-by-rules';
import type { PlannerProblem } from '#lib/planner/problem';
import type { Instance } from '../planner/planner-data';
import { asMip } from './planner-mip';
import { ms } from './timing';

/** An instance on which the peers are tried as well. */
export interface Peered {
  readonly name: string;
  readonly problem: ExactProblem;
  readonly known: Instance['known'];
}

/** Seconds for the mixed-integer solver at least and at most; it is slow, and its clock is the wall's. */
const MIP_LEAST = 2;
const MIP_MOST = 10;

/** The rule-based planner, where it can say what is asked. */
export function byRules(sample: readonly Peered[]): void {
  const told = sample.flatMap(({ name, problem, known }) => {
    const asked = askedOfRules(problem);
    if (asked === null) return [];
    const begun = performance.now();
    const { status, placed } = planByRules(asked, { seed: 1 });
    const took = performance.now() - begun;
    const end = Math.max(0, ...placed.map((one) => one.end));
    const value = status === 'feasible' ? String(end) : 'none';
    return [`${name} ${value} (${knownAs(known)}) ${ms(took)} ms`];
  });
  if (told.length > 0) console.log(`  by rules, value (best): ${told.join('; ')}`);
}

/** The mixed-integer solver HiGHS, where the problem can be said to it; returns how often it is wrong. */
export async function byMip(sample: readonly Peered[], seconds: number): Promise<number> {
  const limit = Math.min(MIP_MOST, Math.max(MIP_LEAST, seconds));
  const told: string[] = [];
  let wrong = 0;
  for (const { name, problem, known } of sample) {
    // The known value as the horizon is a help that the exact engine does not get.
    const most = typeof known === 'number' ? known : known === 'infeasible' ? 60 : known.upper;
    const model = asMip(problem, most);
    if (model === null) continue;
    const begun = performance.now();
    const highs = await loadHighs();
    const { Status, ObjectiveValue } = highs.solve(model, { time_limit: limit });
    const took = performance.now() - begun;
    const answer =
      Status === 'Optimal'
        ? String(Math.round(ObjectiveValue))
        : Status === 'Infeasible'
          ? 'infeasible'
          : 'open';
    if (answer !== 'open' && typeof known !== 'object' && answer !== String(known)) {
      wrong += 1;
      console.log(`  WRONG HiGHS says ${answer} of ${name}, known is ${known}`);
    }
    told.push(`${name} ${answer} (${knownAs(known)}) ${ms(took)} ms`);
  }
  if (told.length > 0) console.log(`  by HiGHS in ${limit} s: ${told.join('; ')}`);
  return wrong;
}

function knownAs(known: Instance['known']): string {
  return typeof known === 'object' ? `${known.lower} to ${known.upper}` : String(known);
}

/** The problem in the words of the rule-based planner; null for setups, which those lack. */
function askedOfRules(problem: ExactProblem): PlannerProblem | null {
  if (problem.setups.length > 0 || problem.goals[0]?.kind !== 'latest') return null;
  const idOf = (task: number): string => `t${task}`;
  return {
    horizon: problem.horizon,
    tasks: problem.tasks.map((task, index) => ({
      id: idOf(index),
      minLength: task.minLength,
      maxLength: task.maxLength,
      notBefore: task.notBefore,
      endBy: task.endBy,
      demands: Object.fromEntries(
        problem.resources.flatMap(({ demands }, resource) =>
          (demands[index] ?? 0) > 0 ? [[`r${resource}`, demands[index] ?? 0]] : [],
        ),
      ),
      needs: null,
      group: null,
    })),
    resources: problem.resources.map(({ capacity }, index) => ({ id: `r${index}`, capacity })),
    stateful: [],
    lags: problem.lags.map(({ from, to, min }, index) => ({
      id: `l${index}`,
      from: idOf(from.task),
      fromAnchor: from.anchor,
      to: idOf(to.task),
      toAnchor: to.anchor,
      min,
      max: null,
    })),
    spanLimits: [],
  };
}
