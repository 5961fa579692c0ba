/**
 * The one shape in which a pure function reports what a person typed or sent wrongly.
 * The impossible throws; a missing row is `null`; everything a person can mend is a Problem.
 */

/** Plain facts about a problem, for the sentence that explains it (what was typed, the limit, the unit). */
export type Facts = Readonly<Record<string, string | number | boolean | null>>;

/** One fault: where it is, which fault it is, and the facts that explain it. */
export interface Problem {
  /** Path into the input, as in `episode.segments[2].recipe.lines[0].planned`. Empty for the whole. */
  readonly path: string;
  /** A stable code in kebab-case, for tests and for choosing a sentence. */
  readonly code: string;
  /** One sentence in plain words that says what is wrong and what would be right. */
  readonly message: string;
  readonly facts?: Facts;
}

export interface Ok<T> {
  readonly ok: true;
  readonly value: T;
}

export interface Failed {
  readonly ok: false;
  readonly problems: readonly Problem[];
}

export type Result<T> = Ok<T> | Failed;

/** Wraps a value as a success. `ok(3)` → `{ ok: true, value: 3 }`. */
export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

/** Wraps one or more problems as a failure; throws if there is none, since a failure must say why. */
export function failed(...problems: readonly Problem[]): Failed {
  if (problems.length === 0) throw new Error('failed() needs at least one problem');
  return { ok: false, problems };
}
