import type { Reading } from './reading';
import type { Row } from './text-rows';
import { ASKS } from './words';

/** Plain words: of the first paragraph while nothing else stands above them, else of no part of the episode. */
export function takeProse(reading: Reading, row: Row): void {
  if (reading.section === 'method' || reading.section === 'list') reading.section = 'none';
  const first = reading.hook.length === 0 || (!reading.hookOver && !reading.blankBefore);
  if (first && !reading.hookOver && reading.dishes.isEmpty && !ASKS.test(row.folded)) {
    reading.hook.push(row);
    return;
  }
  if (reading.hook.length > 0) reading.hookOver = true;
  reading.leave('prose', row);
  reading.above = row;
}
