import type { z } from 'zod';
import type { Problem, Result } from '#lib/result';
import type { FormState } from '../_ui/form/form-state';

/** What an act of a form leads to: a sentence that says what was done, or what to put right. */
export type Act<T> = (value: T) => Promise<Result<string>>;

/** An action as a form calls it, with what it showed last. */
export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;

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
 */
export async function parseThenAct<S extends z.ZodType>(
  schema: S,
  previous: FormState,
  form: FormData,
  act: Act<z.output<S>>,
  fieldOf: (path: string) => string = fieldOfColumn,
): Promise<FormState> {
  const typed = typedTexts(form);
  const sent = { ...previous, typed, done: '', attempt: previous.attempt + 1 };
  const parsed = schema.safeParse(typed);
  if (!parsed.success) {
    const problems = parsed.error.issues.map((issue) => ({
      path: issue.path.map(String).join('.'),
      code: issue.code,
      message: issue.message,
    }));
    return { ...sent, problems };
  }
  const result = await act(parsed.data);
  if (result.ok) {
    const { round } = previous;
    return { ...sent, problems: [], typed: {}, done: result.value, rev: null, round: round + 1 };
  }
  return {
    ...sent,
    rev: standingRev(result.problems) ?? sent.rev,
    problems: onePerField(renamed(result.problems.map(conflictInWords), fieldOf)),
  };
}

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
  if (problem.code !== 'conflict') return problem;
  const { stored } = problem.facts ?? {};
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
