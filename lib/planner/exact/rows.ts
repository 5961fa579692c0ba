/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import { lower, upper } from './atoms';
import type { Draft } from './draft';
import type { Atom } from './implications';
import type { Presence } from './optional';
import { ALWAYS, UNKNOWN, type Pair } from './pairs';
import type { ExactProblem, RowCost, RowUser } from './problem';
import { RowCosts, type RowMember } from './row-costs';

/** Costs are kept below this, so that sums of two fit 32 bits. */
export const MOST_COST = 2 ** 30 - 1;

/** Whether the two can never begin at the same time. */
export function isStrict(problem: ExactProblem, pair: Omit<Pair, 'asked'>): boolean {
  const { first, second, between, back } = pair;
  if (between < 0 || back < 0) return false;
  const long = problem.tasks[first]!.minLength > 0 && problem.tasks[second]!.minLength > 0;
  return long || (between > 0 && back > 0);
}

/**
 * Who stands before whom in rows of tasks: by their starts; of equal starts those that may have no length first,
 * then by their place in the list. A total order, so that what stands between two is always well defined.
 */
export class Rows {
  private readonly known = new Map<string, Atom>();

  private strictPairs: ReadonlySet<number> | null = null;

  /** @param orders see `ordersOf`; those of `pairs` that are strict say who starts first */
  constructor(
    private readonly draft: Draft,
    private readonly problem: ExactProblem,
    private readonly presence: Presence,
    private readonly orders: Int32Array,
    private readonly pairs: readonly Pair[],
  ) {}

  /** Found when first asked for, since most problems have no rows and some have many pairs. */
  private get strict(): ReadonlySet<number> {
    const count = this.problem.tasks.length;
    this.strictPairs ??= new Set(
      this.pairs
        .filter((pair) => isStrict(this.problem, pair))
        .flatMap(({ first, second }) => [first * count + second, second * count + first]),
    );
    return this.strictPairs;
  }

  /** Where `a` stands before `b`; true or false where that is certain. */
  before(a: RowUser, b: RowUser): Atom | boolean {
    const { draft, orders, presence } = this;
    const count = this.problem.tasks.length;
    if (this.strict.has(a.task * count + b.task)) {
      const order = orders[a.task * count + b.task]!;
      if (order === ALWAYS) return true;
      if (order !== UNKNOWN) return [order, 1 - (order & 1)];
      if (orders[b.task * count + a.task] === ALWAYS) return false;
    }
    const [first, second] = this.ranked(a, b) ? [a, b] : [b, a];
    const from = presence.momentOf(first.begin);
    const to = presence.momentOf(second.begin);
    const fromTime = draft.valueOf(from[0]);
    const toTime = draft.valueOf(to[0]);
    if (fromTime !== null && toTime !== null)
      return fromTime + from[1] <= toTime + to[1] === (first === a);
    const key = `${first.begin.task} ${second.begin.task}`;
    let order = this.known.get(key)?.[0];
    if (order === undefined) {
      const variable = draft.make(0, 1);
      draft.chosen.push(variable);
      order = lower(variable);
      this.known.set(key, [order, 1]);
      draft.after(from, to, 0, [[order, 1]]);
      draft.after(to, from, 1, [[upper(variable), 0]]);
    }
    return first === a ? [order, 1] : [order ^ 1, 0];
  }

  /** Whether `a` comes first where both start at the same time. */
  private ranked(a: RowUser, b: RowUser): boolean {
    const long = ({ task }: RowUser): number => (this.problem.tasks[task]!.minLength === 0 ? 0 : 1);
    return (long(a) - long(b) || a.task - b.task) < 0;
  }

  /** The variables that say what each user of the row costs. */
  costs(row: RowCost): readonly number[] {
    const { draft, presence, problem } = this;
    const { users } = row;
    if (users.length === 0) return [];
    const members = users.map((user): RowMember => {
      const begin = presence.momentOf(user.begin);
      const finish = presence.momentOf({ task: user.task, anchor: 'end' });
      const { minLength } = problem.tasks[user.task]!;
      const there = presence.of(user.task);
      if (row.onlyLong && minLength === 0 && begin[0] !== finish[0]) {
        const long = draft.make(0, 1);
        draft.after(begin, finish, 1, [[lower(long), 1]]);
        draft.after(finish, begin, 0, [[upper(long), 0]]);
        there.push([lower(long), 1]);
      }
      return {
        there,
        begin,
        finish,
        length:
          begin[0] === finish[0]
            ? finish[1] - begin[1]
            : user.begin.task === user.task
              ? minLength
              : 0,
        kind: user.kind,
        cost: draft.make(0, MOST_COST),
      };
    });
    const before = users.flatMap((a) => users.map((b) => (a === b ? false : this.before(a, b))));
    draft.propagators.push(new RowCosts(row, members, before));
    return members.map(({ cost }) => cost);
  }
}

/**
 * What a row costs at least, whatever its order: each kind that is surely there is come to at least once, one of
 * them as the first of all, and lasts as long as its longest user.
 */
export function leastOfRow({ tasks }: ExactProblem, { users, change, first, on }: RowCost): number {
  const longest = new Map<number, number>();
  for (const { task, kind } of users) {
    const { minLength, optional } = tasks[task]!;
    if (minLength > 0 && optional !== true)
      longest.set(kind, Math.max(minLength, longest.get(kind) ?? 0));
  }
  if (longest.size === 0) return 0;
  const present = new Set(users.map(({ kind }) => kind));
  let least = 0;
  // What it saves that one of them is the first of all; nothing where a kind that need not be there may be.
  let saved = [...present].some((kind) => !longest.has(kind)) ? 0 : Infinity;
  for (const [kind, length] of longest) {
    const ways = [...present].flatMap((from) => (from === kind ? [] : [change[from]![kind]!]));
    const between = ways.length === 0 ? first[kind]! : Math.min(...ways);
    least += between + on * length;
    saved = Math.min(saved, first[kind]! - between);
  }
  return least + saved;
}
