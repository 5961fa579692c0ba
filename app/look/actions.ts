'use server';

import { z } from 'zod';
import { failed, ok } from '#lib/result';
import { parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';

const schema = z.object({ words: z.string() });

/** Keeps nothing: refuses an empty field and accepts any words, to show what a form says then. */
export async function tryForm(previous: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(schema, previous, form, ({ words }) =>
    Promise.resolve(
      words.trim() === ''
        ? failed({ path: 'words', code: 'empty', message: 'Write something first.' })
        : ok('Accepted. Nothing was kept.'),
    ),
  );
}

/** Says no, to show where a single button tells why. */
export async function sayNo(previous: FormState): Promise<FormState> {
  const problem = { path: '', code: 'refused', message: 'It could not be done, and this is why.' };
  return Promise.resolve({ ...previous, problems: [problem], attempt: previous.attempt + 1 });
}
