import type { StatementPlace } from '#lib/claims/judged';
import { mendAt, type Mends } from '#lib/claims/mend-readings';
import { placeOf, type PlacedText, type Stretch, type Topic } from '#lib/claims/places/placed-text';
import { qualified } from '#lib/claims/qualified';
import { withRuns, type InAll } from '#lib/claims/judge-beyond/minutes-run';
import { readStatements } from '#lib/claims/read-statements';
import type { Statement, TextContext } from '#lib/claims/statement';
import type { Mend, ReadingMend } from '#lib/episode/edit-schema';
import { numberWords } from './said-interval';

/** A statement with its place, and how it was mended. */
export interface ReadRow {
  /** The text’s id and the statement’s number in it, counted from 0. */
  readonly id: string;
  readonly place: StatementPlace;
  /** Its offsets count in the placed text. */
  readonly statement: Statement;
  readonly topic: Topic;
  readonly mend: ReadingMend | null;
  /** Of a time that goes on from another or before it: what they come to. */
  readonly inAll?: InAll;
}

/** What the grammar is told of a stretch: the dishes, the one in force, its ingredients. */
export type ContextOf = (topic: Topic) => Omit<TextContext, 'form'>;

/**
 * All statements of a text in its order, read stretch by stretch, with the person’s mends put in: words that were heard
 * otherwise are read as they were said. Words that say nothing keep their row, with the mend.
 */
export function readRows(text: PlacedText, contextOf: ContextOf, mends: Mends): ReadRow[] {
  const rows: ReadRow[] = [];
  const typed = withoutBound(text);
  let count = 0;
  for (const stretch of text.stretches) {
    const context: TextContext = { form: text.form, ...contextOf(stretch.topic) };
    const words = typed.slice(stretch.start, stretch.end);
    for (const read of readStatements(words, context)) {
      const statement = qualified(moved(read, stretch.start), text.text, context, stretch.topic);
      const mend = mendAt(mends, text, statement.start, statement.end);
      const place = placeOf(text, statement.start, statement.end);
      const row = { id: `${text.said.id}:${count}`, place, statement, topic: stretch.topic, mend };
      count += 1;
      if (mend?.mend.kind === 'about') rows.push(aboutAs(row, mend.mend));
      else if (mend?.mend.kind !== 'heard') rows.push(row);
      if (mend?.mend.kind !== 'heard') continue;
      const heard = asHeard(typed, stretch, statement, mend.mend.text, context);
      if (heard.length === 0) rows.push(row);
      heard.forEach((each, index) =>
        rows.push({ ...row, id: index === 0 ? row.id : `${row.id}.${index}`, statement: each }),
      );
    }
  }
  return withRuns(rows, text.text);
}

/** A statement as the person said it is meant: of which dish, or the day, and of how much of it. */
function aboutAs(row: ReadRow, mend: Extract<Mend, { readonly kind: 'about' }>): ReadRow {
  const { statement } = row;
  const place = { ...row.place, segmentId: mend.segmentId };
  const scoped =
    statement.kind === 'nutrient' || statement.kind === 'amount' || statement.kind === 'price';
  if (!scoped || statement.scope === 'ingredient') return { ...row, place };
  // It is of the dish that was said now, and the person has confirmed the rest.
  const { dish: _dish, unsure: _unsure, ...said } = statement;
  // The person said of what it is, and so of one thing.
  const { every: _every, ...rest } = said;
  return { ...row, place, statement: { ...rest, scope: mend.scope } };
}

/** A number that is bound is never wrong, and no words beside it are its own: marks stand in its place. */
function withoutBound({ form, text }: PlacedText): string {
  if (form !== 'talkingPoint') return text;
  return text.replace(/\[[^[\]]*\]/g, (bound) => '#'.repeat(bound.length));
}

function moved(statement: Statement, by: number): Statement {
  if (by === 0) return statement;
  const { start, end, how } = statement;
  const steps = how.map((step) => ({ ...step, start: step.start + by, end: step.end + by }));
  return { ...statement, start: start + by, end: end + by, how: steps };
}

/** Text on each side that words which were heard otherwise are read in. */
const AROUND = 300;

/** What words say that stand in the place of a statement; a number alone stands in the place of its number. */
function asHeard(
  text: string,
  stretch: Stretch,
  statement: Statement,
  heard: string,
  context: TextContext,
): Statement[] {
  const said = inPlace(text, stretch, statement, heard, context);
  if (said.length > 0) return said;
  const words = statement.words.replace(numberWords(statement), heard);
  return words === statement.words ? [] : inPlace(text, stretch, statement, words, context);
}

function inPlace(
  text: string,
  stretch: Stretch,
  { start, end }: Statement,
  words: string,
  context: TextContext,
): Statement[] {
  const before = text.slice(Math.max(stretch.start, start - AROUND), start);
  const after = text.slice(end, Math.min(stretch.end, end + AROUND));
  const [from, to] = [before.length, before.length + words.length];
  return readStatements(`${before}${words}${after}`, context)
    .filter((each) => each.start < to && each.end > from)
    .map((each) => ({
      ...each,
      start,
      end,
      how: each.how.map((step) => ({
        ...step,
        start: step.start - each.start + start,
        end: step.end - each.start + start,
      })),
    }));
}
