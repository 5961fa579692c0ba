import { existsSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** What is used here of the CP-SAT builder, which mirrors the Python one of OR-Tools. */
export interface Expression {
  plus(other: Linear): Expression;
  minus(other: Linear): Expression;
  times(by: number): Expression;
}
export type Linear = Expression | number;
export interface Literal extends Expression {
  not(): Literal;
}
interface Rule {
  onlyEnforceIf(literals: readonly unknown[]): Rule;
}
export interface CpModel {
  newIntVar(low: number, high: number, name?: string): Expression;
  newBoolVar(name?: string): Literal;
  addLinearConstraint(expression: Linear, low: number, high: number): Rule;
  addMaxEquality(target: Linear, of: readonly Linear[]): Rule;
  addAbsEquality(target: Linear, of: Linear): Rule;
  addDivisionEquality(target: Linear, of: Linear, by: Linear): Rule;
  newOptionalIntervalVar(
    start: Linear,
    size: Linear,
    end: Linear,
    present: unknown,
    name?: string,
  ): unknown;
  newFixedSizeIntervalVar(start: Linear, size: number, name?: string): unknown;
  addCumulative(
    intervals: readonly unknown[],
    demands: readonly number[],
    capacity: number,
  ): unknown;
  minimize(expression: Linear): void;
}
export interface CpSolver {
  solve(model: CpModel, parameters: object): Promise<unknown>;
  statusName(status: unknown): string;
  objectiveValue(): number;
}
export interface CpSat {
  readonly CpModel: new () => CpModel;
  readonly CpSolver: new () => CpSolver;
}

const ENTRY = fileURLToPath(
  new URL('node_modules/or-tools-wasm/build/javascript/node/cp-sat.js', import.meta.url),
);

/** OR-Tools' CP-SAT as WebAssembly, or null where it is not installed; it is too large to be a dependency. */
export async function cpSat(): Promise<CpSat | null> {
  if (!existsSync(ENTRY)) return null;
  return (await import(pathToFileURL(ENTRY).href)) as CpSat;
}
