/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower } from './atoms';
import { always, type Difference } from './differences';
import type { Propagator } from './engine';
import { Implications, type Atom, type Implication } from './implications';
import { Spans } from './spans';

/** A time as the engine has it: a variable and what is added to it. */
export type Moment = readonly [variable: number, offset: number];

/** A model as it is made: variables with their first bounds, differences and propagators. */
export class Draft {
  readonly lows: number[] = [];
  readonly highs: number[] = [];
  readonly differences: Difference[] = [];
  readonly propagators: Propagator[] = [];
  /** What the search may decide on. */
  readonly chosen: number[] = [];
  private readonly rules: Implication[] = [];
  private readonly conjunctions = new Map<string, Atom>();
  private readonly spans = new Map<string, number>();
  private zeroVariable = -1;

  make(low: number, high: number): number {
    this.lows.push(low);
    this.highs.push(high);
    return this.lows.length - 1;
  }

  /** A variable that is always 0. */
  get zero(): number {
    if (this.zeroVariable < 0) this.zeroVariable = this.make(0, 0);
    return this.zeroVariable;
  }

  /** The only value of a variable, or null. */
  valueOf(variable: number): number | null {
    const low = this.lows[variable]!;
    return low === this.highs[variable] ? low : null;
  }

  /** A flag that is 1 where all of `all` hold and of each of `someOf` one; `possible` false: never. */
  flag(
    all: readonly Atom[],
    someOf: readonly (readonly Atom[])[] = [],
    possible: boolean = true,
  ): Atom {
    const flag = this.make(0, possible ? 1 : 0);
    this.rules.push({ all, someOf, flag });
    return [lower(flag), 1];
  }

  /** One atom that holds where all of these do. */
  private together(conditions: readonly Atom[]): Atom {
    if (conditions.length === 1) return conditions[0]!;
    const key = conditions
      .map(([bound, value]) => `${bound}:${value}`)
      .sort()
      .join(' ');
    const known = this.conjunctions.get(key);
    if (known !== undefined) return known;
    const made = this.flag(conditions);
    this.conjunctions.set(key, made);
    return made;
  }

  /** `to` at least `gap` after `from`, where the conditions hold. */
  after(from: Moment, to: Moment, gap: number, conditions: readonly Atom[] = []): void {
    const weight = from[1] + gap - to[1];
    if (from[0] === to[0]) {
      // From the variable 0 to itself: the same contradiction or the same nothing.
      if (weight > 0) this.never(conditions);
      return;
    }
    if (conditions.length === 0) {
      this.differences.push(always(from[0], to[0], weight));
      return;
    }
    const [ifBound, ifValue] = this.together(conditions);
    this.differences.push({ from: from[0], to: to[0], weight, ifBound, ifValue });
  }

  /** The conditions cannot all hold; without any there is no plan. */
  private never(conditions: readonly Atom[]): void {
    if (conditions.length > 0) this.flag(conditions, [], false);
    else this.differences.push(...this.contradiction());
  }

  private contradiction(): Difference[] {
    const other = this.make(0, 0);
    return [always(this.zero, other, 1)];
  }

  /** A variable of at least `to − from` and 0, where the conditions hold; it is at most `most`. */
  span(from: Moment, to: Moment, most: number, conditions: readonly Atom[] = []): number {
    const key = `${from.join(':')} ${to.join(':')} ${conditions.join(' ')}`;
    const known = this.spans.get(key);
    if (known !== undefined) return known;
    const cost = this.make(0, most);
    const same = from[0] === to[0];
    this.propagators.push(
      new Spans(
        'a span',
        cost,
        same ? this.zero : from[0],
        same ? this.zero : to[0],
        to[1] - from[1],
        conditions,
      ),
    );
    this.spans.set(key, cost);
    return cost;
  }

  /** Everything that propagates. */
  finished(): readonly Propagator[] {
    if (this.rules.length === 0) return this.propagators;
    return [...this.propagators, new Implications(this.rules)];
  }
}
