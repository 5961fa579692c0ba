/** A linear program, or a mixed-integer one where a variable must be whole. Units are the caller's. */
export interface Program {
  readonly goal: 'least' | 'most';
  readonly variables: readonly Variable[];
  readonly rows: readonly Row[];
}

export interface Variable {
  /** What one of it adds to the goal. */
  readonly cost: number;
  /** Null for no bound to that side. */
  readonly low: number | null;
  readonly high: number | null;
  readonly whole: boolean;
}

/** A sum over variables that must lie between two bounds; null for no bound to that side. */
export interface Row {
  readonly terms: readonly { readonly variable: number; readonly times: number }[];
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * What an optimiser answers. `duals` says by how much the goal would change for each unit by which a row's binding
 * bound is raised; null for a program with whole variables, which has none. `stopped`: the time was up, or the numbers
 * are beyond the solver; nothing is claimed then.
 */
export type Optimum =
  | {
      readonly status: 'optimal';
      readonly value: number;
      readonly variables: readonly number[];
      /** Each row's sum. */
      readonly rows: readonly number[];
      readonly duals: readonly number[] | null;
    }
  | { readonly status: 'infeasible' | 'unbounded' | 'stopped' };

export interface OptimiseLimits {
  /** Seconds after which it gives up. */
  readonly seconds?: number;
}

/** Throws where a program is none: a number that is not finite, a term of a variable that is not there. */
export function checkProgram({ variables, rows }: Program): void {
  const bounds = (low: number | null, high: number | null, what: string) => {
    const wrong = [low, high].some((bound) => bound !== null && !Number.isFinite(bound));
    if (wrong) throw new RangeError(`${what} has a bound that is not a finite number`);
  };
  variables.forEach(({ cost, low, high }, at) => {
    if (!Number.isFinite(cost))
      throw new RangeError(`variable ${at} has a cost that is not finite`);
    bounds(low, high, `variable ${at}`);
  });
  rows.forEach(({ terms, low, high }, at) => {
    bounds(low, high, `row ${at}`);
    for (const { variable, times } of terms) {
      if (!variables[variable]) throw new RangeError(`row ${at} names variable ${variable}`);
      if (!Number.isFinite(times))
        throw new RangeError(`row ${at} has a factor that is not finite`);
    }
  });
}
