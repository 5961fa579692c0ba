/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { seededRandom } from '../seeded-random';
import { Activity } from './activity';
import { Analysis } from './analysis';
import { lower, upper } from './atoms';
import { Branching } from './branching';
import type { Engine } from './engine';
import { followPlan } from './follow';
import { planOf, type Model } from './model';
import { chooseFree, Visits } from './neighbourhoods';
import { Phases } from './phases';
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
/** Where bound and best are far apart, so many better plans close the gap at most. */
const STEPS = 16;
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
  private readonly phases: Phases;
  private readonly branching: Branching;
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
    this.phases = new Phases(this.engine.variables);
    this.branching = new Branching(model, this.activity, this.phases, (b, v) => this.decide(b, v));
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
    const holds = followPlan(this.model, this.phases, hint, (b, v) => this.decide(b, v));
    if (holds) this.accept();
    this.toRoot();
    return holds;
  }

  /** Takes the variables' values as the best plan. */
  private accept(): void {
    const { engine, model } = this;
    this.plan = planOf(model);
    this.visits.found();
    for (let x = 0; x < engine.variables; x += 1) this.phases.set(x, engine.trail.low(x));
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
      this.branching.putBack();
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
    this.branching.leftwards = this.model.plain.goals[index]!.kind === 'latest';
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
    const step = visit ? 1 : 1 + Math.floor((best - bound) / STEPS);
    let target = hasPlan ? best - step : Infinity;
    const bold = visit ? this.random() < 0.5 : this.run % 2 === 1;
    if (hasPlan && bold) target = this.between(bound, best);
    if (visit) chooseFree(this.model, this.plan!, this.free, this.random);
    for (;;) {
      if (!engine.propagate()) {
        const before = trail.low(goal);
        if (!analysis.resolve()) return 'none';
        this.activity.decay();
        left -= 1;
        this.branching.putBack();
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
      if (visit && this.branching.keepOrder(this.free)) continue;
      if (!this.branching.branch(hasPlan || this.run > 1)) {
        this.accept();
        this.toRoot();
        return 'plan';
      }
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

  private toRoot(): void {
    this.engine.backTo(0);
    this.branching.putBack();
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
