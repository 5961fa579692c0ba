import type { DayNote } from '#lib/shoot/fold-day';

interface Props {
  readonly notes: readonly DayNote[];
  /** Ids of what has not arrived yet. */
  readonly waits: ReadonlySet<string>;
  readonly clock: (at: string) => string;
  readonly titleOf: (rowKey: string) => string | null;
}

/** The notes of the day in order, each with its time and what it is about. */
export function NotesList({ notes, waits, clock, titleOf }: Props) {
  if (notes.length === 0) return null;
  return (
    <section aria-labelledby="notes" className="mt-10">
      <h2 id="notes" className="mb-2">
        Notes
      </h2>
      <ol aria-labelledby="notes" className="border-t-[1.5px] border-ink">
        {notes.map(({ id, at, text, rowKey }) => (
          <li key={id} className="border-b border-line py-2">
            <p className="text-fine text-soft">
              {clock(at)}
              {rowKey !== null &&
                ` · ${titleOf(rowKey) ?? 'a step that is no longer in the order'}`}
              {waits.has(id) && <b className="text-ink"> · waits to be sent</b>}
            </p>
            <p className="text-lead break-words whitespace-pre-wrap">{text}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
