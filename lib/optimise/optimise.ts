import loadHighs from 'highs';
import { lpText, rowName, variableName } from '#lib/optimise/lp-text';
import {
  checkProgram,
  type Optimum,
  type OptimiseLimits,
  type Program,
} from '#lib/optimise/program';

/** Loaded once: a second of the same would be four megabytes more. */
let loaded: ReturnType<typeof loadHighs> | null = null;

/**
 * The optimum of a linear or mixed-integer program, by HiGHS (Huangfu and Hall, Mathematical Programming Computation
 * 10, 2018) compiled to WebAssembly. The same program has the same answer; where several are best, one of them.
 * Tolerances are the solver's: a row may be missed by 1e-7, a whole number by 1e-6.
 *
 * @throws RangeError where the program is none, see `checkProgram`
 * @example least 2x + 3y with x + y at least 4 and x at most 3: 9, by x 3 and y 1; the row's dual is 3
 */
export async function optimise(program: Program, limits: OptimiseLimits = {}): Promise<Optimum> {
  checkProgram(program);
  if (program.variables.length === 0) return withoutVariables(program);
  loaded ??= loadHighs();
  const highs = await loaded;
  const solved = highs.solve(lpText(program), {
    mip_rel_gap: 0,
    mip_abs_gap: 0,
    ...(limits.seconds === undefined ? {} : { time_limit: limits.seconds }),
  });
  if (solved.Status === 'Infeasible') return { status: 'infeasible' };
  if (solved.Status === 'Unbounded') return { status: 'unbounded' };
  if (solved.Status === 'Primal infeasible or unbounded') return eitherOf(program, limits);
  if (solved.Status !== 'Optimal') return { status: 'stopped' };
  const whole = program.variables.some((variable) => variable.whole);
  const columns: Readonly<Record<string, { readonly Primal: number }>> = solved.Columns;
  const variables = program.variables.map((_, at) => columns[variableName(at)]?.Primal ?? 0);
  const duals = new Map(
    solved.Rows.flatMap((row) => ('Dual' in row ? [[row.Name, row.Dual] as const] : [])),
  );
  return {
    status: 'optimal',
    value: solved.ObjectiveValue,
    variables,
    rows: program.rows.map(({ terms }) =>
      terms.reduce((sum, { variable, times }) => sum + times * (variables[variable] ?? 0), 0),
    ),
    duals: whole
      ? null
      : program.rows.map(
          (_, at) => (duals.get(rowName(at, 'low')) ?? 0) + (duals.get(rowName(at, 'high')) ?? 0),
        ),
  };
}

/** Without a goal a program that could be either is infeasible, or it was unbounded. */
async function eitherOf(program: Program, limits: OptimiseLimits): Promise<Optimum> {
  const variables = program.variables.map((variable) => ({ ...variable, cost: 0 }));
  const { status } = await optimise({ ...program, variables }, limits);
  return { status: status === 'optimal' ? 'unbounded' : status };
}

function withoutVariables({ rows }: Program): Optimum {
  const kept = rows.every(({ low, high }) => (low ?? 0) <= 0 && (high ?? 0) >= 0);
  if (!kept) return { status: 'infeasible' };
  const none = rows.map(() => 0);
  return { status: 'optimal', value: 0, variables: [], rows: none, duals: none };
}
