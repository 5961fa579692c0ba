'use client';

import { lanesOf, stripMarks, stripSpan } from '../../../../_ui/geometry';
import { useOneStop } from './use-one-stop';
import { SmallMark } from './standing-mark';
import { atHref, type EditPage, type Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
  /** Chosen by key: the focus goes along. */
  readonly onReach: (id: string) => void;
}

/**
 * The episode from its first second to its last: segments as sticks, and a mark for each statement. The marks are one
 * stop of Tab, and arrow keys lead along them.
 */
export function Strip({ page, chosen, onChoose, onReach }: Props) {
  const { rows, parts, endMs, end } = page;
  const timed = rows.filter(({ startMs }) => startMs !== null);
  const written = rows.filter(({ startMs }) => startMs === null);
  const marks = stripMarks(
    timed.map(({ startMs }) => startMs ?? 0),
    endMs,
  );
  const wide = lanesOf(marks.map((mark) => mark.wide));
  const narrow = lanesOf(marks.map((mark) => mark.narrow));
  const drawn = timed.filter((_, at) => marks[at]?.wide != null && marks[at].narrow != null);
  const always = [...drawn, ...written];
  const first = always.find(({ id }) => id === chosen) ?? always[0];
  const { region, tabIndexOf, ...listeners } = useOneStop<HTMLElement>(first?.id ?? null);
  const link = (row: Row) => (
    <Mark
      page={page}
      row={row}
      here={row.id === chosen}
      tabIndex={tabIndexOf(row.id)}
      onChoose={onChoose}
      onReach={onReach}
    />
  );
  return (
    <nav
      ref={region}
      aria-label="Strip of the episode"
      aria-describedby="strip-keys"
      className="group mt-2 mb-6 print:hidden"
      {...listeners}
    >
      {timed.length > 0 && (
        <>
          <div className="relative mx-3 h-11">
            {parts.map(({ id, title, kind, fromMs, toMs, words }) => {
              const { left, width } = stripSpan(fromMs, toMs, endMs);
              return (
                <div
                  key={id}
                  className="absolute inset-y-0 overflow-hidden border-[1.5px] border-ink bg-raised"
                  style={{ left: `${left}%`, width: `${width}%` }}
                >
                  <div
                    aria-hidden="true"
                    className={`h-2.5 border-b-[1.5px] border-ink ${kind === 'dish' ? 'sticks' : ''}`}
                  />
                  <p className="truncate px-1.5 font-slate font-semibold">
                    {title}
                    <span className="unseen">, {words}</span>
                  </p>
                </div>
              );
            })}
            {parts.length === 0 && (
              <div className="h-full border-[1.5px] border-dashed border-edge bg-raised px-2 content-center text-fine text-soft">
                No segment has a place in the cut yet.
              </div>
            )}
          </div>
          <ol
            className="relative mx-3 mt-1 h-[calc(var(--narrow)*1.5rem)] lg:h-[calc(var(--wide)*1.5rem)]"
            style={{ '--wide': wide, '--narrow': narrow } as React.CSSProperties}
          >
            {timed.map((row, at) => {
              const mark = marks[at];
              if (!mark || (mark.wide === null && mark.narrow === null)) return null;
              return (
                <li
                  key={row.id}
                  className={`absolute top-[calc(var(--narrow)*1.5rem)] -ml-3 lg:top-[calc(var(--wide)*1.5rem)] ${mark.narrow === null ? 'max-lg:hidden' : ''} ${mark.wide === null ? 'lg:hidden' : ''}`}
                  style={
                    {
                      left: `${mark.left}%`,
                      '--wide': mark.wide ?? 0,
                      '--narrow': mark.narrow ?? 0,
                    } as React.CSSProperties
                  }
                >
                  {link(row)}
                </li>
              );
            })}
          </ol>
          <p className="mx-3 flex justify-between text-fine text-soft">
            <span>0:00</span>
            {marks.some((mark) => mark.wide === null || mark.narrow === null) && (
              <span>Where marks stand too close, the list has the others.</span>
            )}
            <span>{end}</span>
          </p>
        </>
      )}
      {written.length > 0 && (
        <div className="mt-1 flex flex-wrap items-center gap-x-3">
          <span className="text-fine text-soft">written or planned</span>
          <ol className="flex flex-wrap gap-x-2">
            {written.map((row) => (
              <li key={row.id}>{link(row)}</li>
            ))}
          </ol>
        </div>
      )}
      <p
        id="strip-keys"
        className="sr-only text-fine text-soft group-has-focus-visible:not-sr-only group-has-focus-visible:mt-1"
      >
        Arrow keys lead from mark to mark, Enter to the statement.
      </p>
    </nav>
  );
}

function Mark({
  page,
  row,
  here,
  tabIndex,
  onChoose,
  onReach,
}: {
  readonly page: EditPage;
  readonly row: Row;
  readonly here: boolean;
  readonly tabIndex: 0 | -1;
  readonly onChoose: (id: string) => void;
  readonly onReach: (id: string) => void;
}) {
  return (
    <a
      href={atHref(page.episodeId, row.id)}
      title={`${row.place}: ${row.words}, ${row.verdict}`}
      aria-label={`${row.place}: ${row.words}, ${row.verdict}`}
      aria-current={here || undefined}
      tabIndex={tabIndex}
      data-stop={row.id}
      className={`flex size-6 items-center justify-center hover:bg-raised aria-[current]:bg-ink aria-[current]:text-paper ${row.standing === 'off' ? 'text-hand' : row.standing === 'unknown' || row.standing === 'aside' ? 'text-soft' : ''}`}
      onClick={(event) => {
        event.preventDefault();
        // No press of a pointer: a key.
        if (event.detail === 0) onReach(row.id);
        else onChoose(row.id);
      }}
    >
      <SmallMark standing={row.standing} heavier={row.heavier} />
    </a>
  );
}
