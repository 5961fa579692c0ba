import { REFERENCE_AMOUNTS } from '#lib/claims/claim-words/reference-amounts';
import type { SaidClaim } from '#lib/overview/said-rows';
import { gramsText } from '#lib/units/read-quantity';
import type { Choice } from '../../../_ui/form/field';
import { STANDING_WORDS } from './_components/view';

/** The choice of a weight that is in no row of the table. */
export const OTHER_WEIGHT = 'other';

/** Reference amounts: nothing said, the likely rows with their verdicts, another weight, then the whole table. */
export function amountChoices({ offers }: SaidClaim): Choice[] {
  const likely = offers.map(({ what, amount, verdict }) => {
    const then = verdict === null ? 'to be weighed' : STANDING_WORDS[verdict];
    // The verdict first: a narrow page cuts the end of a long choice off.
    return { value: what, words: `${then}: ${what}, ${amount}` };
  });
  const others = REFERENCE_AMOUNTS.filter(({ what }) =>
    likely.every(({ value }) => value !== what),
  );
  return [
    { value: '', words: 'nobody has said' },
    ...likely,
    { value: OTHER_WEIGHT, words: 'another weight, in grams below' },
    ...others.map(({ what, amount }) => ({ value: what, words: `${what}, ${amount}` })),
  ];
}

export function judgedAsChoices({ asMeal }: SaidClaim): Choice[] {
  const then = asMeal === null ? '' : `: ${STANDING_WORDS[asMeal]}`;
  return [
    { value: 'food', words: 'a food by itself, by its reference amount' },
    { value: 'meal', words: `a meal or main dish${then}` },
  ];
}

/** What was said, as the form sends it: a likely row of that weight, else the weight itself. */
export function amountSaid({ said, offers }: SaidClaim): { amount: string; grams: string } {
  const mg = said?.raccMg ?? null;
  if (mg === null) return { amount: '', grams: '' };
  const row = offers.find(({ massMg }) => massMg === mg);
  if (row) return { amount: row.what, grams: '' };
  return { amount: OTHER_WEIGHT, grams: gramsText({ lowMg: mg, valueMg: mg, highMg: mg }) };
}
