import type { ExactProblem } from '#lib/planner/exact/problem';

/** More terms than this take the peer longer to read than the bench has. */
const MOST_TERMS = 400_000;

/**
 * A problem of fixed lengths and lags as a mixed-integer program over time, in CPLEX LP form: `x3_7` is 1 where
 * task 3 starts at 7 (Pritsker, Watters, Wolfe, Management Science 16, 1969). Null where the problem has
 * more than that, or would be too long.
 *
 * @param horizon no start is later; the value of a known plan serves
 */
export function asMip(problem: ExactProblem, horizon: number): string | null {
  const [goal] = problem.goals;
  const plain = problem.tasks.every(({ minLength, maxLength }) => minLength === maxLength);
  if (!plain || problem.setups.length > 0 || goal?.kind !== 'latest') return null;
  const times = Array.from({ length: horizon + 1 }, (_, time) => time);
  const startOf = (task: number, sign: string): string =>
    times.map((time) => `${sign} ${time} x${task}_${time}`).join(' ');
  const shift = ({ task, anchor }: { task: number; anchor: 'start' | 'end' }): number =>
    anchor === 'end' ? (problem.tasks[task]?.minLength ?? 0) : 0;
  const rows: string[] = [];
  problem.tasks.forEach((_, task) => {
    rows.push(`${times.map((time) => `+ x${task}_${time}`).join(' ')} = 1`);
  });
  for (const { from, to, min } of problem.lags) {
    if (from.task === to.task) continue;
    const least = min + shift(from) - shift(to);
    rows.push(`${startOf(to.task, '+')} ${startOf(from.task, '-')} >= ${least}`);
  }
  for (const event of goal.events) rows.push(`wrap ${startOf(event.task, '-')} >= ${shift(event)}`);
  for (const { capacity, demands } of problem.resources) {
    if (capacity.length > 1) return null;
    for (const now of times) {
      const there = demands.flatMap((units, task) => {
        const length = problem.tasks[task]?.minLength ?? 0;
        if (units === 0) return [];
        return times
          .filter((start) => start <= now && start + length > now)
          .map((start) => `+ ${units} x${task}_${start}`);
      });
      if (there.length > 0) rows.push(`${there.join(' ')} <= ${capacity[0]?.units ?? 0}`);
    }
  }
  if (rows.reduce((sum, row) => sum + row.length, 0) > 12 * MOST_TERMS) return null;
  const names = problem.tasks.flatMap((_, task) => times.map((time) => `x${task}_${time}`));
  // A line may not be longer than some readers take.
  const text = rows.map((row) => row.replace(/(.{80,200}?) (?=[+-])/g, '$1\n ')).join('\n');
  return `Minimize\n wrap\nSubject To\n${text}\nBinary\n${names.join('\n')}\nEnd\n`;
}
