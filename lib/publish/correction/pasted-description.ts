import { NO_FACTS } from '#lib/claims/edit-facts';
import type { Judged } from '#lib/claims/judged';
import { readEdit } from '#lib/claims/read-edit';
import type { EpisodeFile } from '#lib/episode/schema';
import { namedScopes } from '#lib/figures/breakdown-scope';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { NUTRIENTS } from '#lib/foods/nutrients';
import type { CorrectedNumber } from '#lib/publish/correction/correction-of';
import { printCount } from '#lib/units/print';

/** A number of a pasted description that the ingredients do not allow. */
export interface PastedNumber extends CorrectedNumber {
  /** Its line in the text, counted from 1. */
  readonly line: number;
  /** Its words as they stand there: "607 kcal". */
  readonly words: string;
}

/**
 * The numbers of a description that was pasted, not made here, which the ingredients do not allow: what viewers have
 * read of an episode that was out before it came here. Only energy and macros of which both the words and the number of
 * now are sure. Null where no description was pasted.
 * @param file with its edit
 */
export function pastedNumbers(
  file: EpisodeFile,
  figures: EpisodeFigures,
): readonly PastedNumber[] | null {
  const { edit } = file;
  const texts = edit?.texts.filter(({ kind }) => kind === 'description') ?? [];
  if (!edit || texts.length === 0) return null;
  const numbers = confirmedOnly(publishedNumbers(file, figures));
  const scopes = namedScopes(file);
  const read = readEdit({ ...file, edit: { ...edit, texts } }, NO_FACTS);
  const found = read.judged.flatMap((judged): PastedNumber[] => {
    const { place, statement, against } = judged;
    if (!isSurelyOff(judged) || statement.kind !== 'nutrient' || against?.kind !== 'figure')
      return [];
    const { nutrient, scope } = against;
    const { label, unit } = NUTRIENTS[nutrient];
    const named = scopes.find((each) => JSON.stringify(each.scope) === JSON.stringify(scope));
    if (!named || !HEADLINE_NUTRIENTS.some((each) => each === nutrient)) return [];
    if (statement.nutrient !== nutrient || statement.unit !== unit) return [];
    const now = numbers(nutrient, scope);
    if (now.number === null) return [];
    const ends = [...new Set([statement.low, statement.high].map(printCount))];
    return [
      {
        ...{ scope, nutrient, label, unit, line: place.line, words: statement.words },
        dish: named.segmentId === null ? null : named.title,
        part: named.segmentId === null ? named.title.toLowerCase() : named.part,
        from: { text: ends.join('–'), range: '' },
        to: { text: now.text, range: now.range },
        spoken: false,
      },
    ];
  });
  const isTold = (one: PastedNumber) => (other: PastedNumber) => keyOf(one) === keyOf(other);
  return found.filter((each, at) => found.findIndex(isTold(each)) === at);
}

/** The same wrong number of the same amount is told once, however often it is written. */
const keyOf = ({ scope, nutrient, from }: PastedNumber) =>
  JSON.stringify([scope, nutrient, from.text]);

/** Off, in the description, and in no doubt what it is said of. */
function isSurelyOff({ place, statement, verdict, remark }: Judged): boolean {
  const isSure = statement.unsure !== true && remark === null;
  return place.kind === 'description' && verdict === 'off' && isSure;
}
