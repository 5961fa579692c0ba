/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { seededRandom } from '../seeded-random';
import { Activity } from './activity';
import { Analysis } from './analysis';
import { lower, upper } from './atoms';
import type { Engine } from './engine';
import { planOf, type Model } from './model';
import { chooseFree, Visits } from './neighbourhoods';
import type { ExactOptions, ExactPlan } from './problem';
import { luby } from './restarts';
import { NO_REASON } from './trail';

/** Conflicts in the shortest run between two restarts. */
const RUN = 100;
/** Nogoods kept before the first reduction, and by how much more after each. */
const FIRST_REDUCTION = 6000;
const REDUCTION_GROWTH = 1.08;
/** Conflicts of one visit to a neighbourhood. */
const VISIT = 120;
/** Bound and best are near each other when so many times the gap is less than the best. */
const NEAR = 20;
/** How often the clock is asked. */
const ASK = 16;

export interface GoalResult {
  readonly best: number | null;
  readonly bound: number | null;
  readonly state: 'proven' | 'infeasible' | 'stopped';
}

/**
 * Lazy clause generation (Ohrimenko, Stuckey, Codish 2009; Feydy & Stuckey, CP 2009): decide, propagate,
 * learn a nogood from each conflict, restart; one goal after another.
 *
 * The bound asked of the goal is the first decision of a run, not a fact, so that every nogood holds for the
 * problem itself and serves the later goals too. When such a decision is refuted the lower bound rises.
 * Values are tried first that the best plan has (phase saving). Some runs visit a neighbourhood: orders of
 * the best plan are kept but among a few tasks (large-neighbourhood search, Shaw, CP 1998; with learning).
 *
 * Invariant: `best` belongs to `plan`, which keeps every rule; no plan has a value below `bound`.
 */
export class Search {
  plan: ExactPlan | null = null;
  decisions = 0;
  private readonly engine: Engine;
  private readonly analysis: Analysis;
  private readonly activity: Activity;
  private readonly random: () => number;
  private readonly phase: Int32Array;
  private readonly hasPhase: Uint8Array;
  private readonly taken: Int32Array;
  private takenSize = 0;
  private run = 0;
  private readonly visits = new Visits();
  private mostNogoods = FIRST_REDUCTION;
  private readonly goalValues: Float64Array;
  private asked = 0;
  private stopped = false;
  private readonly free: Uint8Array;

  constructor(
    private readonly model: Model,
    private readonly options: ExactOptions,
  ) {
    this.engine = model.engine;
    this.random = seededRandom(options.seed);
    this.activity = new Activity(this.engine.variables, model.chosen, this.random);
    this.analysis = new Analysis(this.engine, {
      involved: (variable) => this.activity.bump(variable),
    });
    this.phase = new Int32Array(this.engine.variables);
    this.hasPhase = new Uint8Array(this.engine.variables);
    this.taken = new Int32Array(2 * this.engine.variables + 16);
    this.goalValues = new Float64Array(model.goals.length).fill(Infinity);
    this.free = new Uint8Array(model.start.length);
  }

  get conflicts(): number {
    return this.analysis.conflicts;
  }

  /**
   * Tries the starts and ends of `hint`: each is decided. Where they keep every rule they
   * become the plan; where not they stay as the values tried first. Must be called at the root.
   */
  follow(hint: ExactPlan): boolean {
    const { engine, model } = this;
    const { trail } = engine;
    let holds = true;
    for (const [task, flag] of model.presence) {
      this.phase[flag] = hint.absent?.includes(task) === true ? 0 : 1;
      this.hasPhase[flag] = 1;
      holds = holds && this.fix(flag);
    }
    for (let task = 0; task < model.start.length; task += 1) {
      const starts = model.start[task]!;
      const ends = model.end[task]!;
      this.phase[starts] = hint.starts[task]!;
      this.hasPhase[starts] = 1;
      if (ends !== starts) {
        this.phase[ends] = hint.ends[task]! - model.endOffset[task]!;
        this.hasPhase[ends] = 1;
      }
      holds = holds && this.assume(starts) && this.assume(ends);
    }
    // All at once: whether they keep every rule needs one fixpoint, not one for each of them.
    holds = holds && engine.propagate();
    for (let k = 0; holds && k < model.pairs.length; k += 1) {
      const order = model.firstOrder + k;
      const { first, second } = model.pairs[k]!;
      this.phase[order] = hint.starts[first]! <= hint.starts[second]! ? 1 : 0;
      holds = trail.low(order) === trail.high(order) || this.fix(order);
    }
    // What the hint says nothing of, as orders of starts that are equal, is tried at its least.
    for (const variable of model.chosen) {
      if (!holds || trail.low(variable) === trail.high(variable)) continue;
      if (this.hasPhase[variable] === 0) this.phase[variable] = trail.low(variable);
      holds = this.fix(variable);
    }
    if (holds) this.accept();
    this.toRoot();
    return holds;
  }

  private fix(variable: number): boolean {
    return this.assume(variable) && this.engine.propagate();
  }

  /** Decides that the variable has the value of its phase, and lets nothing follow yet. */
  private assume(variable: number): boolean {
    const { engine } = this;
    const { trail } = engine;
    const value = this.phase[variable]!;
    if (trail.low(variable) > value || trail.high(variable) < value) return false;
    if (trail.low(variable) < value) engine.decide(lower(variable), value);
    if (trail.high(variable) > value) engine.decide(upper(variable), -value);
    return true;
  }

  /** Takes the variables' values as the best plan. */
  private accept(): void {
    const { engine, model } = this;
    this.plan = planOf(model);
    this.visits.found();
    for (let x = 0; x < engine.variables; x += 1) {
      this.phase[x] = engine.trail.low(x);
      this.hasPhase[x] = 1;
    }
    model.goals.forEach((goal, index) => {
      this.goalValues[index] = engine.trail.low(goal);
    });
  }

  /** The value of a goal in the best plan. */
  valueOf(goal: number): number {
    return this.goalValues[goal]!;
  }

  /**
   * A bound for a goal without any search (destructive improvement: Klein & Scholl, EJOR 112, 1999): values
   * are asked for by halving, and what propagation alone refutes is not to be had. At the root; false if
   * there is no plan at all.
   */
  probe(index: number): boolean {
    const { engine, analysis } = this;
    const { trail } = engine;
    const goal = this.model.goals[index]!;
    let most = Math.min(trail.high(goal), this.goalValues[index]! - 1);
    while (trail.low(goal) < most && !this.options.shouldStop()) {
      const asked = trail.low(goal) + ((most - trail.low(goal)) >> 1);
      this.decide(upper(goal), -asked);
      if (engine.propagate()) {
        most = asked;
        this.toRoot();
        continue;
      }
      // What is learned from one decision alone is a fact.
      if (!analysis.resolve() || !engine.propagate()) return false;
      this.putBack();
    }
    engine.forgetRoot();
    return true;
  }

  /** Makes goal `index` as small as it can be; the root must be at its fixpoint. */
  minimise(index: number, report: (bound: number) => void): GoalResult {
    const { engine } = this;
    const { trail } = engine;
    const goal = this.model.goals[index]!;
    this.stopped = false;
    const result = (state: GoalResult['state']): GoalResult => {
      this.toRoot();
      const best = this.plan === null ? null : this.goalValues[index]!;
      return { best, bound: state === 'proven' ? best : trail.low(goal), state };
    };
    // Only the first goal is shared: a later one depends on how the earlier ended here.
    const exchange = index === 0 ? this.options.exchange : undefined;
    if (!this.probe(index)) return result(this.plan === null ? 'infeasible' : 'proven');
    let bound = trail.low(goal);
    for (;;) {
      // At the root, at a fixpoint.
      if (exchange !== undefined && !this.learnBound(goal, exchange.bound())) {
        return result(this.plan === null ? 'stopped' : 'proven');
      }
      if (trail.low(goal) > bound) {
        bound = trail.low(goal);
        report(bound);
      }
      const best = this.goalValues[index]!;
      exchange?.publish(best, bound);
      if (bound >= best) return result('proven');
      const least = Math.min(best, exchange?.best() ?? Infinity);
      // The other's plan is as good as any: it has the proof as well.
      if (bound >= least) return result('stopped');
      if (this.stopped || this.options.shouldStop()) return result('stopped');
      const end = this.runOnce(goal, bound, least);
      if (end === 'none') return result(this.plan === null ? 'infeasible' : 'proven');
      if (end === 'plan') report(Math.max(bound, trail.low(goal)));
      if (end === 'stopped') return result('stopped');
    }
  }

  /** Takes over a bound that another search has proven. False if no plan can be better than the best. */
  private learnBound(goal: number, bound: number): boolean {
    const { engine } = this;
    if (bound <= engine.trail.low(goal)) return true;
    return engine.trail.raise(lower(goal), bound, NO_REASON) && engine.propagate();
  }

  /** One run from the root to a restart. */
  private runOnce(
    goal: number,
    bound: number,
    best: number,
  ): 'restart' | 'plan' | 'none' | 'stopped' {
    const { engine, analysis } = this;
    const { trail } = engine;
    this.run += 1;
    const hasPlan = best < Infinity;
    const visit = this.plan !== null && this.model.pairs.length > 0 && this.visits.isDue(this.run);
    let left = visit ? VISIT : luby(Math.ceil(this.run / 2)) * RUN;
    let target = hasPlan ? best - 1 : Infinity;
    if (hasPlan && !visit && this.run % 2 === 1) target = this.between(bound, best);
    if (visit) chooseFree(this.model, this.plan!, this.free, this.random);
    for (;;) {
      if (!engine.propagate()) {
        const before = trail.low(goal);
        if (!analysis.resolve()) return 'none';
        this.activity.decay();
        left -= 1;
        this.putBack();
        if (trail.level === 0) {
          if (!engine.propagate()) return 'none';
          if (trail.low(goal) > before || visit) return this.restart();
        }
        this.asked += 1;
        if (this.asked % ASK === 0 && this.options.shouldStop()) return this.stop();
        continue;
      }
      if (left <= 0) return this.restart();
      if (trail.level === 0 && trail.high(goal) > target) {
        if (trail.low(goal) > target) return this.restart();
        this.decide(upper(goal), -target);
        continue;
      }
      if (visit && this.keepOrder()) continue;
      const variable = hasPlan || this.run > 1 ? this.next() : this.earliest();
      if (variable < 0) {
        this.accept();
        this.toRoot();
        return 'plan';
      }
      this.branch(variable);
      this.asked += 1;
      if (this.asked % ASK === 0 && this.options.shouldStop()) return this.stop();
    }
  }

  /**
   * A bound to ask for between what is proven and what is had: in the middle while they are far apart, nearer
   * to what is proven when it is likely to be had.
   */
  private between(bound: number, best: number): number {
    const { side = 'plans' } = this.options;
    if (side === 'bounds') return bound;
    const gap = best - bound;
    return bound + ((gap - 1) >> (NEAR * gap < best ? 3 : 1));
  }

  private decide(b: number, v: number): void {
    this.decisions += 1;
    this.engine.decide(b, v);
  }

  /** Decides one more order as the best plan has it, among pairs that are not both free. */
  private keepOrder(): boolean {
    const { model, free } = this;
    const { trail } = this.engine;
    for (let k = 0; k < model.pairs.length; k += 1) {
      const { first, second } = model.pairs[k]!;
      if (free[first] === 1 || free[second] === 1) continue;
      const order = model.firstOrder + k;
      if (trail.low(order) === trail.high(order)) continue;
      if (this.phase[order] === 1) this.decide(lower(order), 1);
      else this.decide(upper(order), 0);
      return true;
    }
    return false;
  }

  /** The open variable that was most active in conflicts. */
  private next(): number {
    const { trail } = this.engine;
    for (;;) {
      const variable = this.activity.take();
      if (variable < 0) return this.anyOpen();
      this.taken[this.takenSize] = variable;
      this.takenSize += 1;
      if (this.takenSize === this.taken.length) this.putBack();
      if (trail.low(variable) < trail.high(variable)) return variable;
    }
  }

  private anyOpen(): number {
    const { trail } = this.engine;
    for (const variable of this.model.chosen) {
      if (trail.low(variable) < trail.high(variable)) return variable;
    }
    return -1;
  }

  /** The open start that can be earliest, for a first plan. */
  private earliest(): number {
    const { trail } = this.engine;
    let found = -1;
    for (const variable of this.model.start) {
      const low = trail.low(variable);
      if (low === trail.high(variable)) continue;
      if (
        found < 0 ||
        low < trail.low(found) ||
        (low === trail.low(found) && trail.high(variable) < trail.high(found))
      )
        found = variable;
    }
    return found < 0 ? this.anyOpen() : found;
  }

  private branch(variable: number): void {
    const { trail } = this.engine;
    const low = trail.low(variable);
    const high = trail.high(variable);
    const { firstOrder, pairs } = this.model;
    let value = this.hasPhase[variable] === 1 ? this.phase[variable]! : low;
    if (this.hasPhase[variable] === 0 && variable >= firstOrder) {
      const pair = pairs[variable - firstOrder];
      if (pair !== undefined) {
        const first = this.model.start[pair.first]!;
        const second = this.model.start[pair.second]!;
        value = trail.low(first) <= trail.low(second) ? 1 : 0;
      }
    }
    if (value <= low) this.decide(upper(variable), -low);
    else if (value >= high) this.decide(lower(variable), high);
    else {
      this.decide(upper(variable), -value);
      // Still open from below.
      this.activity.put(variable);
    }
  }

  private putBack(): void {
    for (let at = 0; at < this.takenSize; at += 1) this.activity.put(this.taken[at]!);
    this.takenSize = 0;
  }

  private toRoot(): void {
    this.engine.backTo(0);
    this.putBack();
  }

  private stop(): 'stopped' {
    this.stopped = true;
    this.toRoot();
    return 'stopped';
  }

  private restart(): 'restart' | 'none' {
    const { engine } = this;
    this.toRoot();
    if (!engine.propagate()) return 'none';
    if (engine.nogoods.size > this.mostNogoods) {
      if (!engine.nogoods.reduce()) return 'none';
      this.mostNogoods = Math.floor(this.mostNogoods * REDUCTION_GROWTH);
      if (!engine.propagate()) return 'none';
    }
    engine.forgetRoot();
    return 'restart';
  }
}
