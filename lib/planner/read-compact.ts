import { z } from 'zod';
import type { ExactProblem } from '#lib/planner/exact/problem';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';
import { failed, ok, type Result } from '#lib/result';

const whole = z
  .number()
  .int()
  .min(0)
  .max(2 ** 28);
const signed = z
  .number()
  .int()
  .min(-(2 ** 28))
  .max(2 ** 28);

const schema = z.object({
  id: z.string().optional(),
  horizon: whole,
  tasks: z.number().int().min(1).max(100_000),
  duration: z.array(whole),
  capacity: z.array(whole),
  demand: z.array(z.array(whole)),
  arcs: z.array(z.tuple([whole, whole, signed])),
  setupPairs: z.array(z.tuple([whole, whole, signed, signed])).default([]),
  sink: whole.optional(),
});

/**
 * A problem in our own compact form, one JSON object: `horizon`, `tasks`, `duration`, `capacity`, `demand`
 * by resource, `arcs` [i, j, w] (start of j ≥ start of i + w) and `setupPairs` [i, j, a, b]; the goal is
 * the start of the last task. Never throws.
 */
export function readCompact(text: string): Result<ExactProblem> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const at = Number(/position (\d+)/.exec(reason)?.[1] ?? 0);
    const line = text.slice(0, at).split('\n').length;
    return unexpected(`line ${line}`, `Line ${line}: expected a JSON object (${reason}).`);
  }
  const parsed = schema.safeParse(json);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    const path = (issue?.path ?? []).join('.');
    return unexpected(path, `At "${path}": ${issue?.message ?? 'not as expected'}.`);
  }
  const { tasks, duration, capacity, demand, arcs, setupPairs, horizon, sink } = parsed.data;
  const sizes: [string, number, number][] = [
    ['duration', duration.length, tasks],
    ['demand', demand.length, capacity.length],
    ...demand.map((row, index): [string, number, number] => [`demand.${index}`, row.length, tasks]),
  ];
  for (const [path, found, expected] of sizes) {
    if (found !== expected)
      return unexpected(path, `At "${path}": expected ${expected} entries, found ${found}.`);
  }
  for (const [name, rows] of [
    ['arcs', arcs],
    ['setupPairs', setupPairs],
  ] as const) {
    for (const [index, [i, j]] of rows.entries()) {
      if (i >= tasks || j >= tasks || (name === 'setupPairs' && i === j))
        return unexpected(
          `${name}.${index}`,
          `At "${name}.${index}": expected tasks from 0 to ${tasks - 1}, found ${i} and ${j}.`,
        );
    }
  }
  if (sink !== undefined && sink >= tasks)
    return unexpected('sink', `At "sink": expected a task from 0 to ${tasks - 1}.`);
  return ok(
    startsOnlyProblem({
      lengths: duration,
      capacities: capacity,
      demands: demand,
      lags: arcs,
      setups: setupPairs,
      horizon,
      goal: wrapOf(sink ?? tasks - 1),
    }),
  );
}

function unexpected(path: string, message: string): Result<ExactProblem> {
  return failed({ path, code: 'unexpected-text', message });
}
