import type { Problem } from '#lib/result';

/**
 * What a form shows after it was sent: the faults with the names of their fields as paths, and every
 * text as it was typed, so that nothing has to be typed twice.
 */
export interface FormState {
  readonly problems: readonly Problem[];
  readonly typed: Readonly<Record<string, string>>;
  /** The texts that stand elsewhere now, where somebody changed them meanwhile: shown beside what was typed. */
  readonly theirs?: Readonly<Record<string, string>>;
  /** A sentence that says what was done; empty until something was. */
  readonly done: string;
  /**
   * The revision that stands after somebody else's change; sent with the next try, which then is meant.
   * Null while nothing came between.
   */
  readonly rev: number | null;
  /** How often the form was accepted: its fields begin anew each time. */
  readonly round: number;
  /** How often the form was sent at all. */
  readonly attempt: number;
}

/** Before anything was sent. */
export const UNTOUCHED: FormState = {
  problems: [],
  typed: {},
  done: '',
  rev: null,
  round: 0,
  attempt: 0,
};

/** The faults of one field. A path into it (`amount.low`) belongs to the field `amount`. */
export function errorsAt(state: FormState | undefined, name: string): readonly Problem[] {
  return (state?.problems ?? []).filter(
    ({ path }) => path === name || path.startsWith(`${name}.`) || path.startsWith(`${name}[`),
  );
}

/** The id of a field's control: `fieldId('new-episode', 'title')` → `'new-episode-title'`. */
export function fieldId(form: string, name: string): string {
  return `${form}-${name}`;
}

/** The text that stands elsewhere in place of what was typed here; null where the two are the same. */
export function theirsAt(state: FormState | undefined, name: string): string | null {
  const theirs = state?.theirs?.[name];
  return theirs === undefined || theirs === (state?.typed[name] ?? '') ? null : theirs;
}
