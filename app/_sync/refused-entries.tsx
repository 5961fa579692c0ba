import { Button } from '../_ui/button';
import type { MadeEntry } from './entry';
import type { Waiting } from './waiting-store';

interface Props<E extends MadeEntry> {
  readonly waiting: readonly Waiting<E>[];
  readonly wordsOf: (event: E) => string;
  readonly onAgain: (id: string) => void;
  readonly onThrowAway: (id: string) => void;
}

/** Entries that the program would not have; they stay here until the person decides. */
export function RefusedEntries<E extends MadeEntry>({
  waiting,
  wordsOf,
  onAgain,
  onThrowAway,
}: Props<E>) {
  const refused = waiting.filter((entry) => entry.refused !== null);
  if (refused.length === 0) return null;
  return (
    <section aria-labelledby="refused" className="mb-6 border-[1.5px] border-hand p-4 print:hidden">
      <h2 id="refused" className="text-head">
        Not taken
      </h2>
      <p>These entries are kept here, and the program would not take them.</p>
      <ul>
        {refused.map(({ id, event, refused: why }) => (
          <li key={id} className="mt-3 grid gap-2">
            <p className="break-words">
              <b className="font-semibold">{wordsOf(event)}</b>: {why}
            </p>
            <Button type="button" size="day" onClick={() => onAgain(id)}>
              Send again<span className="unseen"> {wordsOf(event)}</span>
            </Button>
            <Button type="button" tone="hand" size="day" onClick={() => onThrowAway(id)}>
              Throw away<span className="unseen"> {wordsOf(event)}</span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
