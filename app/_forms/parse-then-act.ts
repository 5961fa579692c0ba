import type { z } from 'zod';
import type { Problem, Result } from '#lib/result';
import type { FormState } from '../_ui/form/form-state';

/** What an act of a form leads to: a sentence that says what was done, or what to put right. */
export type Act<T> = (value: T) => Promise<Result<string>>;

/** An action as a form calls it, with what it showed last. */
export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;

/** What is done with typing that was refused, beside handing it back. */
export interface Care {
  /** The texts that the form would show of the row as it stands now; null where it is gone. */
  readonly standing?: (typed: Texts) => Promise<Texts | null>;
  /** Keeps what was typed for the next visit. */
  readonly keep?: (typed: Texts) => Promise<void>;
}
type Texts = Readonly<Record<string, string>>;

/** The texts of a form by name, as typed. A file is none, nor are the framework's own entries. */
export function typedTexts(form: FormData): Record<string, string> {
  return Object.fromEntries(
    [...form.entries()].filter(
      (entry): entry is [string, string] =>
        typeof entry[1] === 'string' && !entry[0].startsWith('$ACTION'),
    ),
  );
}

/**
 * The one way of every form: reads its texts by a schema, acts on what was read, and answers with faults
 * by field and all that was typed, or with what was done.
 * @param previous what the form showed last
 * @param fieldOf the form's field for a path that the act reports, where the two differ
 * @param care keeps what was refused, and finds what stands elsewhere in its place
 */
export async function parseThenAct<S extends z.ZodType>(
  schema: S,
  previous: FormState,
  form: FormData,
  act: Act<z.output<S>>,
  fieldOf: (path: string) => string = fieldOfColumn,
  care: Care = {},
): Promise<FormState> {
  const typed = typedTexts(form);
  const { theirs: _theirs, ...before } = previous;
  const sent = { ...before, typed, done: '', attempt: previous.attempt + 1 };
  const parsed = schema.safeParse(typed);
  if (!parsed.success) {
    const problems = parsed.error.issues.map((issue) => ({
      path: issue.path.map(String).join('.'),
      code: issue.code,
      message: issue.message,
    }));
    await care.keep?.(typed);
    return { ...sent, problems };
  }
  const result = await act(parsed.data);
  if (result.ok) {
    const { round } = previous;
    return { ...sent, problems: [], typed: {}, done: result.value, rev: null, round: round + 1 };
  }
  await care.keep?.(typed);
  const rev = standingRev(result.problems);
  const theirs = rev === null ? null : ((await care.standing?.(typed)) ?? null);
  if (theirs) return { ...sent, rev, theirs, problems: [SIDE_BY_SIDE] };
  return {
    ...sent,
    rev: rev ?? sent.rev,
    problems: onePerField(renamed(result.problems.map(conflictInWords), fieldOf)),
  };
}

/** Said where both texts stand beside each other in the form. */
const SIDE_BY_SIDE: Problem = {
  path: '',
  code: 'conflict',
  message:
    'This was changed elsewhere since you opened it, and nothing was overwritten. Yours stands in the ' +
    'fields, what is saved there now beside them. Save again to keep yours; leave it to keep the other.',
};

function renamed(
  problems: readonly Problem[],
  fieldOf: (path: string) => string,
): readonly Problem[] {
  return problems.map((problem) => ({ ...problem, path: fieldOf(problem.path) }));
}

/** The revision that the row has now, where the refusal was for somebody else's change. */
function standingRev(problems: readonly Problem[]): number | null {
  const conflict = problems.find(({ code }) => code === 'conflict');
  const rev = conflict?.facts?.storedRev;
  return typeof rev === 'number' ? rev : null;
}

/** Says what stands there now, and how to keep the one or the other. Nothing was overwritten. */
function conflictInWords(problem: Problem): Problem {
  if (problem.code !== 'conflict' || problem.facts?.storedRev === undefined) return problem;
  const { stored } = problem.facts;
  const standing = typeof stored === 'string' && !/^[[{]/.test(stored) ? `: “${stored}”` : '';
  const message =
    `This was changed elsewhere since you opened it, and nothing was overwritten${standing}. ` +
    'Save again to keep what you typed here; open it anew to keep the other.';
  return { ...problem, message };
}

/** Several columns may be one field: a conflict is said once for each. */
function onePerField(problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(
    (problem, index) =>
      problem.code !== 'conflict' ||
      problems.findIndex(({ code, path }) => code === 'conflict' && path === problem.path) ===
        index,
  );
}

/** A column of an edit is the field of the same name: `edits[0].patch.title` → `title`. */
export function fieldOfColumn(path: string): string {
  return path.replace(/^edits(?:\[\d+\])?(?:\.(?:row|patch))?\.?/, '');
}
