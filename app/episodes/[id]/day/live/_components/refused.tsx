import { Button } from '../../../../../_ui/button';
import { keyOfEvent, type DayEvent } from '#lib/shoot/day-log';
import { scaleGramsText } from '#lib/units/scale-grams';
import type { DayWaiting } from '../_log/day-sync';

interface Props {
  readonly waiting: readonly DayWaiting[];
  readonly titleOf: (rowKey: string) => string | null;
  readonly onAgain: (id: string) => void;
  readonly onThrowAway: (id: string) => void;
}

/** Entries that the server would not have; they stay here until the person decides. */
export function Refused({ waiting, titleOf, onAgain, onThrowAway }: Props) {
  const refused = waiting.filter((entry) => entry.refused !== null);
  if (refused.length === 0) return null;
  return (
    <section aria-labelledby="refused" className="mb-6 border-[1.5px] border-hand p-4">
      <h2 id="refused" className="text-head">
        Not taken
      </h2>
      <p>These entries are kept here, and the program would not take them.</p>
      <ul>
        {refused.map(({ id, event, refused: why }) => (
          <li key={id} className="mt-3 grid gap-2">
            <p className="break-words">
              <b className="font-semibold">{wordsOf(event, titleOf)}</b>: {why}
            </p>
            <Button type="button" size="day" onClick={() => onAgain(id)}>
              Send again<span className="unseen"> {wordsOf(event, titleOf)}</span>
            </Button>
            <Button type="button" tone="hand" size="day" onClick={() => onThrowAway(id)}>
              Throw away<span className="unseen"> {wordsOf(event, titleOf)}</span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function wordsOf(event: DayEvent, titleOf: (rowKey: string) => string | null): string {
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
