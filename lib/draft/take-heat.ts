import { asksToDo } from './asks-to-do';
import { fromLine, leftOut } from './described';
import type { Reading } from './reading';
import { takeProse } from './take-prose';
import type { Row } from './text-rows';

/**
 * A line that says how hot or how long: a step of the dish in hand, never an ingredient of it. Its list goes on below,
 * unless the line asks for something to be done, as a method does.
 */
export function takeHeat(reading: Reading, row: Row, says: 'step' | 'time'): void {
  const asks = asksToDo(row);
  const noDish = reading.dishes.current === null;
  if (reading.section === 'other' || (noDish && (asks || says === 'time'))) {
    takeProse(reading, row);
    return;
  }
  if (reading.section !== 'method' && (noDish || says === 'time')) {
    const message = noDish
      ? 'How hot or how long, and not of which dish: say it in its method.'
      : 'How long the dish takes, and nothing to do: it is no step of its method.';
    reading.dishes.left.push(leftOut('prose', fromLine(row.line, row.text), message));
    return;
  }
  if (asks) reading.section = 'method';
  reading.dishes.addMethod(row, row.body);
}
