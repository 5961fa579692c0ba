/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Propagator } from './engine';
import type { Trail } from './trail';

/** "Bound is at least value" (see `atoms.ts`). */
export type Atom = readonly [bound: number, value: number];

/** Where all of `all` hold and of each of `someOf` at least one, the flag (0 or 1) is 1. */
export interface Implication {
  readonly all: readonly Atom[];
  readonly someOf: readonly (readonly Atom[])[];
  readonly flag: number;
}

/**
 * Implications to a flag, by unit propagation: the flag becomes 1 when its premises hold; where it is 0 and
 * one premise of `all` is open, that one is false.
 *
 * Invariant of an explanation: every premise but the one made false is named by an atom that is true; of a
 * `someOf` one is enough.
 */
export class Implications implements Propagator {
  readonly name = 'what follows from several';
  readonly wakes: readonly number[];
  readonly turn = 1;

  constructor(private readonly rules: readonly Implication[]) {
    const bounds = rules.flatMap(({ all, someOf, flag }) => [
      ...[...all, ...someOf.flat()].map(([bound]) => bound),
      upper(flag),
    ]);
    this.wakes = [...new Set(bounds)];
  }

  propagate(trail: Trail): boolean {
    for (const rule of this.rules) {
      if (trail.bound[lower(rule.flag)]! >= 1) continue;
      if (!this.look(trail, rule)) return false;
    }
    return true;
  }

  private look(trail: Trail, rule: Implication): boolean {
    const { bound } = trail;
    let open: Atom | null = null;
    for (const atom of rule.all) {
      if (bound[atom[0]]! >= atom[1]) continue;
      if (open !== null || bound[atom[0] ^ 1]! >= 1 - atom[1]) return true;
      open = atom;
    }
    for (const atoms of rule.someOf) {
      if (!atoms.some(([b, v]) => bound[b]! >= v)) return true;
    }
    if (open === null) return trail.raise(lower(rule.flag), 1, this.reason(trail, rule, null));
    if (bound[upper(rule.flag)]! < 0) return true;
    return trail.raise(open[0] ^ 1, 1 - open[1], this.reason(trail, rule, open));
  }

  private reason(trail: Trail, { all, someOf, flag }: Implication, open: Atom | null): number {
    trail.because();
    for (const atom of all) if (atom !== open) trail.say(atom[0], atom[1]);
    for (const atoms of someOf) {
      const holds = atoms.find(([b, v]) => trail.bound[b]! >= v)!;
      trail.say(holds[0], holds[1]);
    }
    if (open !== null) trail.say(upper(flag), 0);
    return trail.said();
  }
}
