import { keyOfEvent, type DayEvent } from '#lib/shoot/day-log';
import { scaleGramsText } from '#lib/units/scale-grams';

/** What an entry says, for a person who has to decide about it. `{ kind: 'note', … }` → `'Note “the jar”'` */
export function entryWords(event: DayEvent, titleOf: (rowKey: string) => string | null): string {
  if (event.kind === 'note') return `Note “${event.payload.text}”`;
  if (event.kind === 'pickup') return `To get later “${event.payload.text}”`;
  if (event.kind === 'said') return `Said “${event.payload.text}”`;
  if (event.kind === 'weighed') {
    return `${ABOUT.weighed}, ${scaleGramsText(event.payload.grossMg)} g on the scale`;
  }
  const words = ABOUT[event.kind];
  if (OF_THE_DAY.has(event.kind)) return words;
  return `${words}: ${titleOf(keyOfEvent(event) ?? '') ?? 'a step that is not in this order'}`;
}

const ABOUT = {
  started: 'Started',
  done: 'Done',
  skipped: 'Skipped',
  redo: 'Again',
  takenBack: 'Not done after all',
  take: 'Take of a shot',
  without: 'Done without a shot',
  temperature: 'Inside temperature',
  longer: 'Takes longer',
  replanned: 'Another order from now on',
  orderBack: 'The order before',
  weighed: 'Weighed',
  display: 'Photo of the scale’s display',
  struckOut: 'A reading struck out',
  unsaid: 'Not said after all',
  cameraClock: 'The clock that was filmed',
} as const;

/** What is about no row. */
const OF_THE_DAY: ReadonlySet<DayEvent['kind']> = new Set([
  'replanned',
  'orderBack',
  'display',
  'struckOut',
  'unsaid',
  'cameraClock',
]);
