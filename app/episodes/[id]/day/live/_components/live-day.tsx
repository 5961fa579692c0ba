'use client';

import { useState } from 'react';
import { ConnectionLine } from '../../../../../_sync/connection-line';
import { RefusedEntries } from '../../../../../_sync/refused-entries';
import { useMinute } from '../../../../../_sync/use-device';
import { useSync } from '../../../../../_sync/use-sync';
import type { Episode } from '#lib/episode/schema';
import type { DishesOnDay } from '#lib/overview/dishes-on-day';
import { pickupRef, rowKey, type RowEvent } from '#lib/shoot/day-log';
import { missingShots } from '#lib/shoot/day-shots';
import { dayTimers, stillRunning } from '#lib/shoot/day-timers';
import { entryClock } from '#lib/shoot/entry-clock';
import { foldDay } from '#lib/shoot/fold-day';
import { minuteOf } from '#lib/shoot/local-time';
import { lotsNow, type DayLot } from '#lib/shoot/lot-actions';
import { isBehind, isFilmingNow, nowAndNext } from '#lib/shoot/now-and-next';
import { rowsNow, slipMin } from '#lib/shoot/replan-rows';
import { DAY_LOG, type DayNews } from '../_log/day-sync';
import { rowsInOrder, type LiveRow } from '../live-row';
import { AtHand } from './at-hand';
import { LotActions } from './lot-actions';
import { LastDone } from './last-done';
import { lastDone, leftOver, SAID, stateOfRow } from './live-words';
import { NoteForm } from './note-form';
import { NotesList } from './notes-list';
import { NowCard } from './now-card';
import { OrderList } from './order-list';
import { Pickups } from './pickups';
import { entryWords } from './entry-words';
import { ScaleAndSay } from './scale-and-say';
import { Slip } from './slip';
import { Timers } from './timers';

interface Props {
  readonly address: string;
  readonly replanAddress: string;
  readonly dayId: string;
  readonly date: string;
  readonly zone: string;
  readonly region: Episode['region'];
  readonly rows: readonly LiveRow[];
  /** Food that may stand out for so long. */
  readonly lots: readonly DayLot[];
  readonly first: DayNews;
  readonly firstDishes: DishesOnDay;
  readonly sayAddress: string;
  readonly photoAddress: string;
}

/** A mark that waits for an answer about the shots that are still missing. */
interface Asked {
  readonly kind: RowEvent['kind'];
  readonly row: LiveRow;
  /** Whether the person is getting them now. */
  readonly taking: boolean;
}

/** The filming day while it happens: one thing now, one thing next, what is done, and notes. */
export function LiveDay(props: Props) {
  const { address, replanAddress, sayAddress, photoAddress, dayId, date, zone, region, first } =
    props;
  const [state, acts] = useSync(DAY_LOG, address, dayId, first);
  const [said, setSaid] = useState('');
  const [asked, setAsked] = useState<Asked | null>(null);
  const minute = useMinute();
  const nowMin = minute && minuteOf(minute, date, zone);
  const clock = (at: string) => entryClock(at, date, zone);
  const here = state.waiting.filter((entry) => entry.logId === dayId);
  const open = here.filter(({ refused }) => refused === null).map(({ event }) => event);
  const events = [...state.known, ...open];
  const fold = foldDay(events);
  const rows = rowsInOrder(props.rows, fold);
  const timers = dayTimers(rows, fold);
  const running = stillRunning(timers, minute?.getTime() ?? 0);
  const { now, next, behindMin } = nowAndNext(rows, fold, nowMin, running);
  const waits = new Set(open.map(({ id }) => id));
  const titleOf = (key: string) => rows.find((row) => row.key === key)?.title ?? null;
  const today = nowMin !== null && isFilmingNow(nowMin);
  const entries = rows.map(({ entry }) => entry);
  const standing = today
    ? rowsNow(entries, fold, { nowMin, minuteOf: (at) => minuteOf(new Date(at), date, zone) })
    : null;
  const slip = standing && today ? slipMin(entries, standing, nowMin) : 0;
  const actions = standing && today ? lotsNow(props.lots, entries, standing, nowMin) : [];

  const enter = (kind: RowEvent['kind'], row: Pick<LiveRow, 'ref' | 'title'>) => {
    setAsked(null);
    setSaid(`${SAID[kind]}: ${row.title}.`);
    void acts.enter({ kind, refs: row.ref, payload: {} });
  };
  const missingOf = (row: LiveRow) =>
    row.role === null
      ? []
      : missingShots({ id: row.entry.stepId ?? '', role: row.role }, row.shots, fold);
  const mark = (kind: RowEvent['kind'], row: LiveRow) => {
    const begins = kind === 'started' || (kind === 'done' && !fold.startedAt.has(row.key));
    if (begins && missingOf(row).length > 0) setAsked({ kind, row, taking: false });
    else enter(kind, row);
  };
  const owed = asked && missingOf(asked.row);
  const last = lastDone(fold, rows);
  const longerUntil = now && fold.longerUntil.get(now.key);
  const since = now && fold.startedAt.get(now.key);

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
      <RefusedEntries
        waiting={state.waiting}
        wordsOf={(event) => entryWords(event, titleOf)}
        onAgain={(id) => void acts.sendAgain(id)}
        onThrowAway={(id) => void acts.throwAway(id)}
      />
      <noscript>
        <p className="my-4 font-semibold">
          Entries need JavaScript in this browser. The day sheet can be printed on the day page.
        </p>
      </noscript>
      <LotActions actions={actions} />
      <Timers dayId={dayId} timers={timers} clock={clock} onDone={(row) => mark('done', row)} />
      <div className="grid gap-6 lg:grid-cols-[minmax(0,1fr)_22rem] lg:items-start">
        <div>
          {today && (
            <Slip
              address={replanAddress}
              dayId={dayId}
              slip={slip}
              waiting={open}
              ready={state.ready}
              order={fold.order && { id: fold.order.id, at: clock(fold.order.at) }}
              onBack={(replannedId) => {
                setSaid('Taken back: the order below is the one before.');
                void acts.enter({ kind: 'orderBack', refs: {}, payload: { replannedId } });
              }}
              onTake={(news) => {
                setSaid('Taken: the order below is the new one.');
                void acts.enter({ kind: 'replanned', refs: {}, payload: news.order });
              }}
            />
          )}
          <NowCard
            now={now}
            next={next}
            empty={rows.length === 0}
            behindMin={behindMin}
            since={since ? clock(since) : null}
            until={longerUntil ? clock(longerUntil) : null}
            ready={state.ready}
            onMark={mark}
            onLonger={(row, minutes) => {
              setSaid(`${minutes} min more for ${row.title}.`);
              void acts.enter({ kind: 'longer', refs: row.ref, payload: { minutes } });
            }}
          >
            <AtHand
              row={owed?.length ? (asked?.row ?? now) : now}
              region={region}
              fold={fold}
              ready={state.ready}
              clock={clock}
              missing={asked?.taking ? null : owed}
              onTakeNow={() => setAsked((before) => before && { ...before, taking: true })}
              onWithout={(shots) => {
                if (asked === null) return;
                for (const { id } of shots) {
                  const payload = { shotId: id };
                  void acts.enter({ kind: 'without', refs: asked.row.ref, payload });
                }
                enter(asked.kind, asked.row);
              }}
              onEnter={acts.enter}
            />
          </NowCard>
          <ScaleAndSay
            {...{ dayId, region, first: props.firstDishes, sayAddress, photoAddress }}
            state={state}
            events={events}
            waiting={open}
            rows={rows}
            fold={fold}
            step={now ?? next}
            clock={clock}
            onEnter={acts.enter}
            onTold={setSaid}
          />
        </div>
        <div className="grid gap-6">
          {last && (
            <LastDone
              title={last.row.title}
              at={clock(last.at)}
              onTakeBack={() => enter('takenBack', last.row)}
            />
          )}
          <NoteForm
            rows={rows}
            ready={state.ready}
            onNote={async (text, ref) => {
              await acts.enter({ kind: 'note', refs: ref ?? {}, payload: { text } });
              setSaid('Note kept.');
            }}
            onPickup={async (text, ref, minutes) => {
              await acts.enter({ kind: 'pickup', refs: ref ?? {}, payload: { text, minutes } });
              setSaid('Kept, to get later: the next order has a place for it.');
            }}
          />
        </div>
      </div>
      <Pickups
        pickups={fold.pickups}
        clock={clock}
        titleOf={titleOf}
        placedAt={(id) => rows.find(({ key }) => key === rowKey(pickupRef(id)))?.from ?? null}
        onGot={({ id, text }, got) =>
          enter(got ? 'done' : 'takenBack', { ref: pickupRef(id), title: text })
        }
      />
      <NotesList notes={fold.notes} waits={waits} clock={clock} titleOf={titleOf} />
      <OrderList
        rows={rows}
        stateOf={(row) =>
          stateOfRow(row, { now, next, fold, behind: isBehind(row, rows, fold, nowMin), clock })
        }
        ready={state.ready}
        unknown={leftOver(fold, rows, clock)}
        onMark={mark}
      />
    </>
  );
}
