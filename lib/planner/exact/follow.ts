/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Model } from './model';
import type { Phases } from './phases';
import type { ExactPlan } from './problem';

/**
 * Decides the starts and ends of a plan that somebody proposes, and what it says nothing of at its least.
 * True if that keeps every rule: then all variables are fixed. Its values are what is tried first from now
 * on, kept or not. Must be called at the root; goes back to it is left to the caller.
 */
export function followPlan(
  model: Model,
  phases: Phases,
  hint: ExactPlan,
  decide: (b: number, v: number) => void,
): boolean {
  const { engine } = model;
  const { trail } = engine;
  /** Decides that the variable has its value, and lets nothing follow yet. */
  const assume = (variable: number): boolean => {
    const value = phases.value[variable]!;
    if (trail.low(variable) > value || trail.high(variable) < value) return false;
    if (trail.low(variable) < value) decide(lower(variable), value);
    if (trail.high(variable) > value) decide(upper(variable), -value);
    return true;
  };
  const fix = (variable: number): boolean => assume(variable) && engine.propagate();

  let holds = true;
  for (const [task, flag] of model.presence) {
    phases.set(flag, hint.absent?.includes(task) === true ? 0 : 1);
    holds = holds && fix(flag);
  }
  for (let task = 0; task < model.start.length; task += 1) {
    const starts = model.start[task]!;
    const ends = model.end[task]!;
    phases.set(starts, hint.starts[task]!);
    if (ends !== starts) phases.set(ends, hint.ends[task]! - model.endOffset[task]!);
    holds = holds && assume(starts) && assume(ends);
  }
  // All at once: whether they keep every rule needs one fixpoint, not one for each of them.
  holds = holds && engine.propagate();
  for (let k = 0; holds && k < model.pairs.length; k += 1) {
    const order = model.firstOrder + k;
    const { first, second } = model.pairs[k]!;
    phases.set(order, hint.starts[first]! <= hint.starts[second]! ? 1 : 0);
    holds = trail.low(order) === trail.high(order) || fix(order);
  }
  // What the hint says nothing of, as orders of starts that are equal, is tried at its least.
  for (const variable of model.chosen) {
    if (!holds || trail.low(variable) === trail.high(variable)) continue;
    if (phases.has[variable] === 0) phases.value[variable] = trail.low(variable);
    holds = fix(variable);
  }
  return holds;
}
