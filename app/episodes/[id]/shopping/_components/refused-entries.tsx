import { Button } from '../../../../_ui/button';
import { LIST_WORDS, type ListEvent } from '#lib/shopping/list-events';
import type { Waiting } from '../../../../_sync/waiting-store';

interface Props {
  readonly waiting: readonly Waiting<ListEvent>[];
  readonly nameOf: (foodId: string) => string;
  readonly onAgain: (id: string) => void;
  readonly onThrowAway: (id: string) => void;
}

/** Entries that the program would not have; they stay here until the person decides. */
export function RefusedEntries({ waiting, nameOf, onAgain, onThrowAway }: Props) {
  const refused = waiting.filter((entry) => entry.refused !== null);
  if (refused.length === 0) return null;
  return (
    <section aria-labelledby="refused" className="mb-6 border-[1.5px] border-hand p-4 print:hidden">
      <h2 id="refused" className="text-head">
        Not taken
      </h2>
      <p>These entries are kept here, and the program would not take them.</p>
      <ul>
        {refused.map(({ id, event, refused: why }) => {
          const food = event.foodId === null ? '' : `: ${nameOf(event.foodId)}`;
          const words = `${LIST_WORDS[event.kind]}${food}`;
          return (
            <li key={id} className="mt-3 grid gap-2">
              <p className="break-words">
                <b className="font-semibold">{words}</b>: {why}
              </p>
              <Button type="button" size="day" onClick={() => onAgain(id)}>
                Send again<span className="unseen"> {words}</span>
              </Button>
              <Button type="button" tone="hand" size="day" onClick={() => onThrowAway(id)}>
                Throw away<span className="unseen"> {words}</span>
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
