import type { ExactProblem } from '#lib/planner/exact/problem';
import { startsOnlyProblem } from '#lib/planner/read-starts';
import { reading, Words } from '#lib/planner/read-words';
import type { Result } from '#lib/result';

/**
 * A project with weighted earliness and tardiness as data of a constraint modelling language (`.dzn`, as in
 * the MiniZinc challenges 2016 and 2017): `n_tasks`, `n_res`, `d`, `rr`, `rc`, `suc`, `t_max`, and
 * `deadline` with a wanted start and the weights before and after it for each task. Never throws.
 */
export function readDeviations(text: string): Result<ExactProblem> {
  return reading(() => {
    const words: Words = new Words(text, /[A-Za-z_][A-Za-z_0-9]*|-?\d+|\.\.|[^\s,]/g, '%');
    const lists = new Map<string, number[]>();
    const rows: number[][] = [];
    while (words.more) {
      const name = words.take('a name');
      if (!/^[A-Za-z_]/.test(name)) words.fail('a name before this');
      words.mark('=');
      if (name === 'suc') readSets(words, rows);
      else lists.set(name, readNumbers(words));
      words.mark(';');
    }
    const list = (name: string, size?: number): readonly number[] => {
      const found = lists.get(name);
      if (found === undefined) words.fail(`"${name} = …" somewhere before`);
      if (size !== undefined && found.length !== size)
        words.fail(`${size} numbers in "${name}", not ${found.length}, before`);
      return found;
    };
    const one = (name: string): number => list(name, 1)[0] ?? 0;
    const count = one('n_tasks');
    const resources = one('n_res');
    if (rows.length !== count) words.fail(`${count} sets in "suc", not ${rows.length}, before`);
    const lengths = list('d', count);
    const needs = list('rr', resources * count);
    const demands = Array.from({ length: resources }, (_, resource) =>
      needs.slice(resource * count, (resource + 1) * count),
    );
    const wanted = list('deadline', 3 * count);
    const lags = rows.flatMap((row, task) =>
      row.map((next) => {
        if (next < 1 || next > count) words.fail(`successors from 1 to ${count} before`);
        return [task, next - 1, lengths[task] ?? 0] as const;
      }),
    );
    const capacities = list('rc', resources);
    for (const number of [...lengths, ...needs, ...capacities, one('t_max')]) {
      if (number < 0) words.fail('no negative length, need, capacity or t_max before');
    }
    const problem = startsOnlyProblem({
      lengths,
      capacities,
      demands,
      lags,
      horizon: one('t_max') + Math.max(0, ...lengths),
      goal: {
        name: 'deviations',
        kind: 'deviations',
        of: Array.from({ length: count }, (_, task) => ({
          event: { task, anchor: 'start' as const },
          due: wanted[3 * task] ?? 0,
          early: wanted[3 * task + 1] ?? 0,
          late: wanted[3 * task + 2] ?? 0,
        })),
      },
      firstNumber: 1,
    });
    // No task starts after `t_max`.
    const tasks = problem.tasks.map((task) => ({ ...task, endBy: one('t_max') + task.maxLength }));
    return { ...problem, tasks };
  });
}

/** A number, a list, or `array2d(1..a, 1..b, list)`. */
function readNumbers(words: Words): number[] {
  if (words.is('array2d')) {
    words.mark('array2d');
    words.mark('(');
    for (let dimension = 0; dimension < 2; dimension += 1) {
      words.whole('first index', 1, 1);
      words.mark('..');
      words.whole('last index', 0);
    }
    const list = readNumbers(words);
    words.mark(')');
    return list;
  }
  if (!words.is('[')) return [words.whole('a number or a list', -(2 ** 28))];
  words.mark('[');
  const list: number[] = [];
  while (!words.is(']')) list.push(words.whole('a number or "]"', -(2 ** 28)));
  words.mark(']');
  return list;
}

function readSets(words: Words, rows: number[][]): void {
  words.mark('[');
  while (!words.is(']')) {
    words.mark('{');
    const row: number[] = [];
    while (!words.is('}')) {
      const from = words.whole('a number or "}"', 0);
      if (!words.is('..')) {
        row.push(from);
        continue;
      }
      words.mark('..');
      const to = words.whole('the end of the range', 0, from + 100_000);
      for (let value = from; value <= to; value += 1) row.push(value);
    }
    words.mark('}');
    rows.push(row);
  }
  words.mark(']');
}
