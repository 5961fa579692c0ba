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
    return { ...sent, problems: [], typed: {}, done: result.value, round: previous.round + 1 };
  }
  return { ...sent, problems: renamed(result.problems, fieldOf) };
}

function renamed(
  problems: readonly Problem[],
  fieldOf: (path: string) => string,
): readonly Problem[] {
  return problems.map((problem) => ({ ...problem, path: fieldOf(problem.path) }));
}

/** A column of an edit is the field of the same name: `edits[0].patch.title` → `title`. */
export function fieldOfColumn(path: string): string {
  return path.replace(/^edits(?:\[\d+\])?(?:\.(?:row|patch))?\.?/, '');
}
