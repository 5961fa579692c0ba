/* eslint-disable @typescript-eslint/no-non-null-assertion -- typed arrays under the engine's own indices */
import type { Draft, Moment } from './draft';
import type { Atom } from './implications';
import type { Presence } from './optional';
import { isStrict, type Rows } from './rows';
import type { ExactProblem, ExactSetup, RowUser, States } from './problem';

/**
 * The least time from the end of a use of one kind to the start of one of another, whatever uses stand between;
 * null where no uses lead there. Where changes keep the triangle inequality these are the changes themselves.
 */
export function leastChanges(problem: ExactProblem, states: States): (number | null)[][] {
  const { change, users } = states;
  const least = change.map((row, from) => row.map((time, to) => (from === to ? 0 : time)));
  change.forEach((_, via) => {
    const lengths = users
      .filter(({ kind }) => kind === via)
      .map(({ task }) => problem.tasks[task]!.minLength);
    if (lengths.length === 0) return;
    const stay = Math.min(...lengths);
    for (const row of least) {
      const there = row[via] ?? null;
      if (there === null) continue;
      least[via]!.forEach((onward, to) => {
        if (onward === null) return;
        const through = there + stay + onward;
        if (row[to] === null || through < row[to]!) row[to] = through;
      });
    }
  });
  return least;
}

/** Two users of different kinds with the least time between them either way. */
interface Apart {
  readonly a: RowUser;
  readonly b: RowUser;
  readonly setup: ExactSetup;
}

function apartIn(problem: ExactProblem, states: States): Apart[] {
  const least = leastChanges(problem, states);
  const never = problem.horizon + 1;
  return states.users.flatMap((a, place) =>
    states.users.slice(place + 1).flatMap((b): Apart[] => {
      if (a.kind === b.kind || (a.past && b.past)) return [];
      const setup = {
        name: states.name,
        first: a.task,
        second: b.task,
        between: least[a.kind]![b.kind] ?? never,
        back: least[b.kind]![a.kind] ?? never,
      };
      return [{ a, b, setup }];
    }),
  );
}

/** Whether the pair is kept apart by a setup of the engine's own, with all that propagates on those. */
function isPlain(problem: ExactProblem, { setup }: Apart): boolean {
  const optional = [setup.first, setup.second].some(
    (task) => problem.tasks[task]!.optional === true,
  );
  return !optional && isStrict(problem, setup);
}

/** The setups that states come to, for pairs of tasks that are always there and cannot start together. */
export function plainSetups(problem: ExactProblem): ExactSetup[] {
  return (problem.states ?? []).flatMap((states) =>
    apartIn(problem, states)
      .filter((apart) => isPlain(problem, apart))
      .map(({ setup }) => setup),
  );
}

/**
 * The rest of what states ask: the other pairs, the first change, changes between neighbours that take longer
 * than a way over other states, and tasks that make a change.
 */
export function addStates(
  problem: ExactProblem,
  draft: Draft,
  presence: Presence,
  rows: Rows,
): void {
  for (const states of problem.states ?? []) {
    for (const apart of apartIn(problem, states)) {
      if (isPlain(problem, apart)) continue;
      const { a, b, setup } = apart;
      for (const [one, other, gap] of [
        [a, b, setup.between],
        [b, a, setup.back],
      ] as const) {
        const order = rows.before(one, other);
        if (order === false) continue;
        presence.apart(one.task, other.task, gap, ...(order === true ? [] : [order]));
      }
    }
    addNeighbours(problem, states, draft, presence, rows);
  }
}

function addNeighbours(
  problem: ExactProblem,
  states: States,
  draft: Draft,
  presence: Presence,
  rows: Rows,
): void {
  const { users, initial, change, changeTasks } = states;
  const least = leastChanges(problem, states);
  const zero: Moment = [draft.zero, 0];
  const fresh = !users.some(({ past }) => past);
  const startOf = ({ task }: RowUser): Moment => presence.momentOf({ task, anchor: 'start' });
  const endOf = ({ task }: RowUser): Moment => presence.momentOf({ task, anchor: 'end' });

  /** Holds where `user` follows `before` (null: the beginning) with none of `kinds` between; null: never. */
  const follows = (
    before: RowUser | null,
    user: RowUser,
    bars: (kind: number) => boolean,
    possible = true,
  ): Atom | null => {
    const order = before === null ? true : rows.before(before, user);
    if (order === false) return null;
    const all = [
      ...presence.of(...(before === null ? [] : [before.task]), user.task),
      ...(order === true ? [] : [order]),
    ];
    const someOf: Atom[][] = [];
    for (const other of users) {
      if (other === user || other === before || !bars(other.kind)) continue;
      const ways = [
        rows.before(user, other),
        ...(before === null ? [] : [rows.before(other, before)]),
      ];
      if (ways.includes(true)) continue;
      const away = presence.of(other.task).map(([b, v]): Atom => [b ^ 1, 1 - v]);
      const atoms = [...away, ...ways.flatMap((way) => (typeof way === 'boolean' ? [] : [way]))];
      // Certainly between.
      if (atoms.length === 0) return null;
      someOf.push(atoms);
    }
    return draft.flag(all, someOf, possible);
  };

  for (const user of users) {
    if (user.past) continue;
    const { kind } = user;
    if (fresh && kind !== initial) {
      const soonest = least[initial]![kind] ?? null;
      draft.after(zero, startOf(user), soonest ?? problem.horizon + 1, presence.of(user.task));
    }
    for (const before of [...(fresh ? [null] : []), ...users]) {
      const from = before === null ? initial : before.kind;
      if (from === kind) continue;
      const direct = change[from]![kind] ?? null;
      const over = before === null ? zero : endOf(before);
      if (direct === null || direct > (least[from]![kind] ?? 0)) {
        const third = (other: number): boolean => other !== from && other !== kind;
        const next = follows(before, user, third, direct !== null);
        if (next !== null && direct !== null) draft.after(over, startOf(user), direct, [next]);
      }
      const task = changeTasks.find((one) => one.user === user.task && one.from === from)?.task;
      if (task === undefined || direct === null) continue;
      const next = follows(before, user, (other) => other !== from);
      if (next === null) continue;
      const begin = presence.momentOf({ task, anchor: 'start' });
      draft.after(over, begin, 0, [next]);
      draft.after(begin, presence.momentOf({ task, anchor: 'end' }), direct, [next]);
    }
  }
}
