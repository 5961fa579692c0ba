import { Button } from '../../../../../_ui/button';
import type { RowEvent } from '#lib/shoot/day-log';
import type { LiveRow } from '../live-row';
import type { RowState } from './live-words';

interface Props {
  readonly rows: readonly LiveRow[];
  readonly stateOf: (row: LiveRow) => RowState;
  readonly ready: boolean;
  /** When rows were done that are not in the order. */
  readonly unknown: readonly string[];
  readonly onMark: (kind: RowEvent['kind'], row: LiveRow) => void;
}

/** The whole order; each row stays in its place, so that a button is where it was. */
export function OrderList({ rows, stateOf, ready, unknown, onMark }: Props) {
  return (
    <section aria-labelledby="order" className="mt-10">
      <h2 id="order" className="mb-2">
        The order
      </h2>
      {unknown.length > 0 && (
        <p className="mb-2 font-semibold">
          Also done, of steps that are no longer in the order: {unknown.join(', ')}
        </p>
      )}
      <ol className="border-t-[1.5px] border-ink">
        {rows.map((row) => (
          <Row
            key={row.key}
            row={row}
            state={stateOf(row)}
            ready={ready}
            onMark={(kind) => onMark(kind, row)}
          />
        ))}
      </ol>
    </section>
  );
}

/** What can be said of a row, by how it stands; of the one that is now its own card says it. */
const BUTTONS: Readonly<
  Record<RowState['kind'], readonly (readonly [RowEvent['kind'], string])[]>
> = {
  now: [],
  open: [['done', 'Done']],
  underWay: [
    ['done', 'Done'],
    ['takenBack', 'Not started after all'],
  ],
  done: [
    ['takenBack', 'Not done after all'],
    ['redo', 'Make it again'],
  ],
  skipped: [['takenBack', 'Not skipped after all']],
};

interface RowProps {
  readonly row: LiveRow;
  readonly state: RowState;
  readonly ready: boolean;
  readonly onMark: (kind: RowEvent['kind']) => void;
}

function Row({ row, state, ready, onMark }: RowProps) {
  const done = state.kind === 'done' || state.kind === 'skipped';
  const buttons = BUTTONS[state.kind];
  const dish = `dish-of-${row.key}`;
  return (
    <li className="grid grid-cols-[5.5rem_1fr] items-center gap-y-2 border-b border-line py-2 md:grid-cols-[6rem_1fr_16rem]">
      <p className="self-start">
        <b className="text-lead">{row.from}</b>
        <span className="block text-fine text-soft">to {row.to}</span>
      </p>
      <div className={`self-stretch pl-3 ${row.edge}`}>
        <b className={`text-lead font-semibold ${done ? 'text-soft' : ''}`}>{row.title}</b>
        {row.segmentTitle !== null && (
          <span id={dish} className="block text-lead wrap-anywhere">
            {row.segmentTitle}
          </span>
        )}
        {state.words !== '' && <b className="block font-semibold">{state.words}</b>}
        {!done && <span className="block text-fine text-soft">{row.place}</span>}
      </div>
      {state.kind !== 'now' && (
        <div className="grid gap-2 max-md:col-span-2 md:pl-4">
          {buttons.map(([kind, words]) => (
            <Button
              key={kind}
              type="button"
              size="day"
              disabled={!ready}
              aria-describedby={row.segmentTitle === null ? undefined : dish}
              onClick={() => onMark(kind)}
            >
              {words}
              <span className="unseen"> {row.title}</span>
            </Button>
          ))}
        </div>
      )}
    </li>
  );
}
