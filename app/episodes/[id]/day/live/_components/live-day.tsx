'use client';

import { useState } from 'react';
import type { RowEvent, RowRef } from '#lib/shoot/day-log';
import { entryClock } from '#lib/shoot/entry-clock';
import { foldDay } from '#lib/shoot/fold-day';
import { minuteOf } from '#lib/shoot/local-time';
import { isBehind, nowAndNext } from '#lib/shoot/now-and-next';
import type { News } from '../_log/transport';
import type { LiveRow } from '../live-row';
import { ConnectionLine } from './connection-line';
import { lastDone, leftOver, type RowState } from './live-words';
import { LastDone } from './last-done';
import { NoteForm } from './note-form';
import { NotesList } from './notes-list';
import { NowCard } from './now-card';
import { OrderList } from './order-list';
import { Refused } from './refused';
import { useDaySync } from './use-day-sync';
import { useMinute } from './use-device';

interface Props {
  readonly address: string;
  readonly dayId: string;
  readonly date: string;
  readonly zone: string;
  readonly rows: readonly LiveRow[];
  readonly first: News;
}

/** The filming day while it happens: one thing now, one thing next, what is done, and notes. */
export function LiveDay({ address, dayId, date, zone, rows, first }: Props) {
  const [state, acts] = useDaySync(address, dayId, first);
  const [said, setSaid] = useState('');
  const minute = useMinute();
  const nowMin = minute && minuteOf(minute, date, zone);
  const clock = (at: string) => entryClock(at, date, zone);
  const here = state.waiting.filter((entry) => entry.dayId === dayId);
  const open = here.filter(({ refused }) => refused === null).map(({ event }) => event);
  const fold = foldDay([...state.known, ...open]);
  const { now, next, behindMin } = nowAndNext(rows, fold, nowMin);
  const waits = new Set(open.map(({ id }) => id));
  const titleOf = (key: string) => rows.find((row) => row.key === key)?.title ?? null;

  const mark = (kind: RowEvent['kind'], row: { readonly ref: RowRef; readonly title: string }) => {
    setSaid(kind === 'done' ? `Done: ${row.title}.` : `Not done after all: ${row.title}.`);
    void acts.enter({ kind, refs: row.ref, payload: {} });
  };
  const stateOf = (row: LiveRow): RowState => {
    const at = fold.doneAt.get(row.key);
    if (at !== undefined) return { kind: 'done', words: `done ${clock(at)}` };
    if (row === now) return { kind: 'now', words: 'now' };
    if (row === next) return { kind: 'open', words: 'next' };
    if (isBehind(row, rows, fold, nowMin)) return { kind: 'open', words: 'over' };
    return { kind: 'open', words: '' };
  };
  const last = lastDone(fold, rows);

  return (
    <>
      <ConnectionLine
        waiting={state.waiting.filter(({ refused }) => refused === null).length}
        connected={state.connected}
        letIn={state.letIn}
        lasts={state.lasts}
      />
      <p role="status" className="unseen">
        {said}
      </p>
      <Refused
        waiting={state.waiting}
        titleOf={titleOf}
        onAgain={(id) => void acts.sendAgain(id)}
        onThrowAway={(id) => void acts.throwAway(id)}
      />
      <noscript>
        <p className="my-4 font-semibold">
          Entries need JavaScript in this browser. The day sheet can be printed on the day page.
        </p>
      </noscript>
      <div className="grid gap-6 lg:grid-cols-[minmax(0,1fr)_22rem] lg:items-start">
        <NowCard
          now={now}
          next={next}
          empty={rows.length === 0}
          behindMin={behindMin}
          ready={state.ready}
          onDone={(row) => mark('done', row)}
        />
        <div className="grid gap-6">
          {last && (
            <LastDone
              title={last.row.title}
              at={clock(last.at)}
              onTakeBack={() => mark('takenBack', last.row)}
            />
          )}
          <NoteForm
            rows={rows}
            ready={state.ready}
            onNote={async (text, ref) => {
              await acts.enter({ kind: 'note', refs: ref ?? {}, payload: { text } });
              setSaid('Note kept.');
            }}
          />
        </div>
      </div>
      <NotesList notes={fold.notes} waits={waits} clock={clock} titleOf={titleOf} />
      <OrderList
        rows={rows}
        stateOf={stateOf}
        ready={state.ready}
        unknown={leftOver(fold, rows, clock)}
        onMark={mark}
      />
    </>
  );
}
