/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */

/** By variable the value to try first, where there is one. */
export class Phases {
  readonly value: Int32Array;
  readonly has: Uint8Array;

  constructor(variables: number) {
    this.value = new Int32Array(variables);
    this.has = new Uint8Array(variables);
  }

  set(variable: number, value: number): void {
    this.value[variable] = value;
    this.has[variable] = 1;
  }

  /** Whether the variable has a value of `least` or more. */
  isAtLeast(variable: number, least: number): boolean {
    return this.has[variable] === 1 && this.value[variable]! >= least;
  }
}
