import { cut } from './clean-title';
import { fromLine, leftOut, type Described } from './described';
import type { Said } from './draft';
import { Reading } from './reading';
import { takeChapter, takeLinks, takeNumbers } from './take-beside';
import { takeHeat } from './take-heat';
import { takeInline, takeLabel, takeTable } from './take-list';
import { takeWords } from './take-words';
import { textRows, type Row } from './text-rows';

/** The longest hook and disclosure, as the file format has them. */
const MOST_HOOK = 600;
const MOST_DISCLOSURE = 400;
/** Lines that are read: a hundred times those of a long description. */
const MOST_ROWS = 5000;

/**
 * What a description says of dishes, and what it has beside them: its first paragraph, chapters, links, who paid.
 * One reading from top to bottom: a heading or a label says what the lines below it are, until the next.
 * @returns all of it by line; a line that became nothing is `left`
 */
export function readDescription(description: string): Described {
  const rows = textRows(description);
  const read = readRows(rows.slice(0, MOST_ROWS));
  const next = rows[MOST_ROWS];
  if (!next) return read;
  const message = `At most ${MOST_ROWS} lines of a description are read: the rest was not.`;
  const rest = leftOut('full', fromLine(next.line, next.text), message);
  return { ...read, left: [...read.left, rest] };
}

function readRows(rows: readonly Row[]): Described {
  const reading = new Reading(rows);
  rows.forEach((row, at) => take(reading, row, at));
  return {
    hook: joined(reading.hook, MOST_HOOK, '\n'),
    chapters: reading.chapters,
    dishes: reading.dishes.end(),
    links: reading.links,
    disclosure: joined(reading.disclosure, MOST_DISCLOSURE, ' '),
    left: reading.dishes.left,
  };
}

function take(reading: Reading, row: Row, at: number): void {
  const kind = reading.kinds[at] ?? { kind: 'blank' };
  const { above } = reading;
  if (kind.kind !== 'blank') reading.above = null;
  if (kind.kind !== 'words' && reading.hook.length > 0) reading.hookOver = true;
  switch (kind.kind) {
    case 'blank':
      reading.blankBefore = true;
      return;
    case 'rule':
      // It parts what stands above it from what stands below, as a blank line does.
      reading.blankBefore = true;
      return;
    case 'hashtags':
    case 'chaptersLabel':
      break;
    case 'chapter':
      takeChapter(reading, kind.chapter);
      break;
    case 'links':
      takeLinks(reading, row, above);
      break;
    case 'disclosure':
      reading.disclosure.push(row);
      break;
    case 'allergens':
      reading.leave('allergens', row);
      break;
    case 'numbers':
      takeNumbers(reading, row);
      break;
    case 'portions':
      reading.dishes.takePortions(row, kind.portions);
      break;
    case 'heat':
      takeHeat(reading, row, kind.says);
      break;
    case 'unclear':
      reading.leave('unclear', row);
      break;
    case 'table':
      takeTable(reading, row, kind.table);
      break;
    case 'inline':
      takeInline(reading, row, kind);
      break;
    case 'ingredientsLabel':
      takeLabel(reading, row, kind);
      break;
    case 'methodLabel':
      reading.section = 'method';
      reading.dishes.any();
      if (kind.rest !== '') reading.dishes.addMethod(row, kind.rest);
      break;
    case 'amount':
    case 'words':
      takeWords(reading, row, kind.kind, at);
  }
  reading.blankBefore = false;
}

function joined(rows: readonly Row[], most: number, glue: string): Said | null {
  const [first] = rows;
  if (!first) return null;
  const text = cut(rows.map((row) => row.text).join(glue), most);
  return { text, from: fromLine(first.line, rows.map((row) => row.text).join(' ')) };
}
