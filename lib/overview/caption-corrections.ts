import type { EditFacts } from '#lib/claims/edit-facts';
import { correctCaptions, type CorrectedCaptions } from '#lib/claims/correct-captions';
import type { NumbersFor } from '#lib/claims/judge/judge-context';
import type { Judged } from '#lib/claims/judged';
import { readEdit } from '#lib/claims/read-edit';
import { oneLine } from '#lib/claims/sentence-around';
import { captionsAs } from '#lib/cut/captions-as';
import type { Captions } from '#lib/cut/captions';
import { readSpoken } from '#lib/cut/spoken';
import type { EditText } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { printRuntime } from '#lib/units/print';

/** A number of captions that is off, and the words that would be right. */
export interface CaptionCorrection {
  /** Names it within its text. */
  readonly key: string;
  /** '3:10', or '' where captions have no time there. */
  readonly place: string;
  readonly said: string;
  readonly right: string;
  readonly why: string;
  readonly start: number;
  readonly end: number;
}

/** Captions of the edit with what may be corrected in them. */
export interface CorrectableCaptions {
  readonly text: EditText;
  readonly format: Captions['format'];
  readonly corrections: readonly CaptionCorrection[];
}

/**
 * The captions of an episode, each with the numbers that are off and have better words. A transcript has no times to
 * keep and is not among them.
 * @param file the episode as its numbers go out, with its edit
 * @param numbersFor the numbers that go out; those of the file if left out
 */
export function correctableCaptions(
  file: EpisodeFile,
  facts: EditFacts,
  numbersFor?: NumbersFor,
): CorrectableCaptions[] {
  const { judged, texts } = readEdit(file, facts, numbersFor);
  const said = new Map(texts.map((each) => [each.said.id, each.text]));
  return (file.edit?.texts ?? []).flatMap((text) => {
    if (text.kind !== 'captions') return [];
    const read = readSpoken(text.text);
    const format = read.ok ? read.value.captions?.format : undefined;
    if (!format) return [];
    const own = judged.filter(({ place }) => place.textId === text.id);
    const corrections = own.flatMap((each) => correctionOf(each, said.get(text.id) ?? ''));
    return [{ text, format, corrections }];
  });
}

function correctionOf(
  { verdict, sayInstead, statement, place, why }: Judged,
  said: string,
): CaptionCorrection[] {
  // Where the person said what was really heard, the words stand nowhere in the file.
  const isThere = said.slice(statement.start, statement.end) === statement.words;
  if (verdict !== 'off' || sayInstead === null || !isThere) return [];
  // 'contains walnuts' does not fit in the place of 'nut free': a card says it.
  if (statement.kind === 'freeFrom') return [];
  const { start, end } = stretchOf(statement);
  const words = said.slice(start, end);
  const at = place.startMs === null ? '' : printRuntime(Math.floor(place.startMs / 1000));
  return [
    {
      key: `c${start}-${end}`,
      place: at,
      said: oneLine(words),
      right: sayInstead,
      why,
      start,
      end,
    },
  ];
}

/** What the right words stand for: of an amount the number and its unit alone, since they do not name the food again. */
function stretchOf(statement: Judged['statement']): {
  readonly start: number;
  readonly end: number;
} {
  const { start, end } = statement;
  if (statement.kind !== 'amount' || statement.unit === 'piece') return { start, end };
  const told = statement.how.filter(({ stage }) => AMOUNT.has(stage));
  const within = told.filter((step) => step.start >= start && step.end <= end);
  if (!within.some(({ stage }) => stage === 'unit')) return { start, end };
  return {
    start: Math.min(...within.map((step) => step.start)),
    end: Math.max(...within.map((step) => step.end)),
  };
}

const AMOUNT: ReadonlySet<string> = new Set(['hedge', 'number', 'unit']);

/**
 * The captions with the corrections that the person accepted, in their own format to the byte, or in the other.
 * @param accepted whether a correction's key is
 */
export function acceptedInto(
  { text, corrections }: CorrectableCaptions,
  accepted: (key: string) => boolean,
  format: Captions['format'],
): CorrectedCaptions {
  const chosen = corrections
    .filter(({ key }) => accepted(key))
    .map(({ start, end, right }) => ({ start, end, words: right }));
  const corrected = correctCaptions(text.text, chosen);
  const read = readSpoken(corrected.text);
  const captions = read.ok ? read.value.captions : null;
  if (!captions || captions.format === format) return corrected;
  return { ...corrected, text: captionsAs(captions, format).text };
}
