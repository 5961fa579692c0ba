'use server';

import { printGrams } from '#lib/units/print';
import { REFERENCE_AMOUNTS } from '#lib/claims/claim-words/reference-amounts';
import { failed, ok, type Result } from '#lib/result';
import { claimsColumns } from '#lib/store/episode-columns';
import { parseThenAct } from '../../../_forms/parse-then-act';
import type { FormState } from '../../../_ui/form/form-state';
import { change } from '../change';
import { OTHER_WEIGHT } from './claim-choices';
import { claimsForm } from './claims-schema';

/** What claim words said of a dish are judged by, as one act. */
export async function saveDishClaims(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    claimsForm,
    state,
    form,
    async ({ episodeId, segmentId, rev, amount, grams, judgedAs, proteinPermille }) => {
      const read = referenceMg(amount, grams);
      if (!read.ok) return read;
      const raccMg = read.value;
      const meal = judgedAs === 'meal';
      const unsaid = !meal && raccMg === null && proteinPermille === null;
      const patch = claimsColumns(unsaid ? null : { proteinPermille, raccMg, meal });
      return change(episodeId, 'Say what claim words are judged by', [
        { op: 'update', entity: 'Segment', id: segmentId, rev, patch },
      ]);
    },
    (path) => FIELDS.find(([column]) => path.endsWith(column))?.[1] ?? path,
  );
}

const FIELDS = [
  ['proteinPermille', 'proteinPermille'],
  ['raccMg', 'grams'],
  ['claimsMeal', 'judgedAs'],
] as const;

/** The row that was chosen, or the grams; never both where they differ. */
function referenceMg(amount: string, grams: number | null): Result<number | null> {
  if (amount === '') return ok(grams);
  const row = REFERENCE_AMOUNTS.find(({ what }) => what === amount);
  if (!row && amount !== OTHER_WEIGHT) return wrong('amount', 'Choose one of the amounts.');
  const listed = row?.massMg ?? null;
  if (listed === null) {
    return grams === null
      ? wrong('grams', row ? `Weigh ${row.amount} of it, and write its grams.` : 'Write its grams.')
      : ok(grams);
  }
  if (grams !== null && grams !== listed) {
    const message = `${printGrams(listed)} g is chosen, and another weight is written: clear it, or choose “another weight”.`;
    return wrong('grams', message);
  }
  return ok(listed);
}

const wrong = (path: string, message: string) => failed({ path, code: 'reference', message });
