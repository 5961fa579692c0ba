import { fromLine } from './described';
import type { Heading } from './heading';
import type { Reading } from './reading';
import { foldRow, type Row } from './text-rows';
import { DISH_PART, MEAL } from './words';

/** Marks that name a part within a list that has a label of its own. */
const WEAK: ReadonlySet<Heading['style']> = new Set([
  'colon',
  'bold',
  'deepHash',
  'plain',
  'picture',
  'capitals',
]);

/**
 * Opens, ends or goes on with a dish, as a heading says.
 * @returns whether what the heading says was taken up
 */
export function takeHeading(reading: Reading, row: Row, heading: Heading): boolean {
  const dish = reading.dishes.current;
  const inLabelled =
    dish !== null && dish.labelled && dish.style !== null && reading.section === 'list';
  const weaker =
    inLabelled &&
    heading.style !== dish.style &&
    WEAK.has(heading.style) &&
    heading.asides.length === 0;
  if (heading.role === 'quiet') {
    reading.section = 'none';
    reading.dishes.current = null;
    return true;
  }
  // What stands beside parts in the same form is a part itself: "Ragu:", "White sauce:".
  if (heading.role === 'part' && dish?.style === 'colon' && heading.style === 'colon')
    dish.isPart ||= !dish.labelled;
  if (heading.role === 'part' || (heading.role === 'dish' && weaker)) {
    const said = { text: heading.title, from: fromLine(row.line, row.text) };
    reading.dishes.takePart(said, heading.style, DISH_PART.test(foldRow(heading.title)));
    reading.section = 'list';
    return true;
  }
  if (heading.role === 'other') {
    // A line of an ingredient in capitals within a list is none.
    if (reading.section === 'list' && !reading.blankBefore && heading.style === 'capitals')
      return false;
    reading.section = 'other';
    reading.dishes.current = null;
    reading.above = row;
    return true;
  }
  if (heading.role === 'list') {
    reading.dishes.continueOrOpen();
    reading.section = 'list';
    return true;
  }
  const isMeal = heading.asides.length > 0 && MEAL.test(foldRow(heading.title));
  const within = reading.section === 'method' || reading.section === 'list';
  if (heading.style === 'plain' && within && !reading.blankBefore && !isMeal) return false;
  const open = reading.dishes.open(
    { text: heading.title, from: fromLine(row.line, row.text) },
    heading.style,
  );
  reading.dishes.givePortions(open, row, heading.portions);
  if (heading.asides.includes('numbers')) reading.leave('numbers', row);
  reading.section = 'none';
  return true;
}
