import { asksToDo, SAYS_I } from './asks-to-do';
import { headingAt } from './heading';
import type { Reading } from './reading';
import { takeHeading } from './take-heading';
import { takeProse } from './take-prose';
import type { Row } from './text-rows';
import { ASKS, ELSEWHERE, KEEPS } from './words';

/** A line that its own words do not tell: a heading, an ingredient, a step or prose, by what stands around it. */
export function takeWords(reading: Reading, row: Row, kind: 'amount' | 'words', at: number): void {
  const heading =
    kind === 'words' ? headingAt(reading.rows, reading.kinds, at, reading.isChapter) : null;
  if (heading && takeHeading(reading, row, heading)) return;
  if (reading.section === 'other') {
    takeProse(reading, row);
    return;
  }
  if (reading.section === 'method') {
    if (kind === 'amount' && row.lead !== 'number' && reading.blankBefore && isListed(reading, at))
      reading.section = 'list';
    else if (!reading.blankBefore || row.lead === 'number' || asksToDo(row)) {
      reading.dishes.addMethod(row, row.body);
      return;
    }
  }
  if (kind === 'amount') {
    if (reading.section === 'list' || isListed(reading, at)) {
      reading.dishes.any();
      reading.section = 'list';
      reading.dishes.addLines(row);
    } else if (reading.dishes.current && asksToDo(row)) reading.dishes.addMethod(row, row.body);
    else takeProse(reading, row);
    return;
  }
  if (reading.section === 'list' && isPlainIngredient(reading, row))
    reading.dishes.addLine(row, row.ingredient);
  else if (reading.dishes.current && asksToDo(row)) {
    reading.section = 'method';
    reading.dishes.addMethod(row, row.body);
  } else takeProse(reading, row);
}

/** An amount outside a list begins one right below its dish, as a bullet, or beside another. */
function isListed(reading: Reading, at: number): boolean {
  if (
    reading.dishes.current &&
    reading.dishes.current.title !== null &&
    reading.dishes.current.lines.length === 0
  )
    return true;
  const beside = [at - 1, at + 1].some((near) => reading.kinds[near]?.kind === 'amount');
  return beside || reading.rows[at]?.lead === 'bullet';
}

/** Whether words without an amount are an ingredient of the list that they stand in: "salt and pepper". */
function isPlainIngredient(reading: Reading, row: Row): boolean {
  const { folded, lead, text } = row;
  const words = folded.split(' ').length;
  if ([ASKS, ELSEWHERE, KEEPS].some((no) => no.test(folded)) || words > 14) return false;
  if (lead === 'bullet') return !(/[.!?]$/.test(text) && words > 6);
  const joined = !reading.blankBefore || reading.dishes.current?.lines.length === 0;
  return joined && words <= 7 && !/[.!?:]$/.test(text) && !SAYS_I.test(folded);
}
