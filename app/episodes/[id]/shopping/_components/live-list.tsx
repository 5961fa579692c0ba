'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { ConnectionLine } from '../../../../_sync/connection-line';
import { RefusedEntries } from '../../../../_sync/refused-entries';
import { usePhotos } from '../../../../_sync/use-photos';
import { useSync } from '../../../../_sync/use-sync';
import { basketCount, rowStanding } from '#lib/shopping/basket';
import { foldList } from '#lib/shopping/fold-list';
import { LIST_WORDS, type ListScope } from '#lib/shopping/list-events';
import { codeOrder } from '#lib/shopping/list-code';
import { takenAsListed, type Shelves } from '#lib/shopping/shelf-rows';
import type { ShoppingItem, ShoppingList } from '#lib/shopping/shopping-list';
import { LIST_LOG, type ListNews, type PressedInList } from '../_log/list-log';
import { CarryPart } from './carry-part';
import { InsteadForm } from './instead-form';
import { Items, type ItemParts } from './items';
import { PaidPart } from './paid-part';
import { PutAwayPart } from './put-away-part';
import { RowStandingLine } from './row-standing-line';
import { useWorkedOut } from './use-worked-out';

export interface LiveListProps {
  /** `/episodes/…/shopping`. */
  readonly path: string;
  /** Behind an address of this list: `?from=…&to=…`, or nothing. */
  readonly query: string;
  readonly scope: ListScope;
  readonly list: ShoppingList;
  readonly shelves: Shelves;
  readonly first: ListNews;
  /** The date in the person's kitchen. */
  readonly today: string;
}

/** The list in the shop: what is taken is ticked, with or without signal, on every device alike. */
export function LiveList({ path, query, scope, list, shelves, first, today }: LiveListProps) {
  const [state, acts] = useSync(LIST_LOG, `${path}/events`, scope, first);
  const [asked, setAsked] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  // Boxes show at once what was pressed, before the device has kept it.
  const [pressed, setPressed] = useState<Pressed>([]);
  const router = useRouter();
  const workOut = useWorkedOut(`${path}/dishes${query}`, state.connected);
  const here = state.waiting.filter(({ logId, refused }) => logId === scope && refused === null);
  const fold = foldList([...state.known, ...here.map(({ event }) => event)]);
  const atList = foldList(first.events).putAway;
  const arrived = foldList(state.known).putAway.filter((id) => !atList.includes(id)).length;
  // What was put away is in stock: the list is made anew.
  useEffect(() => {
    if (arrived > 0) router.refresh();
  }, [arrived, router]);
  const named = state.known.flatMap((event) =>
    event.kind === 'instead' && event.payload.photoSha256 !== null
      ? [event.payload.photoSha256]
      : [],
  );
  const photos = usePhotos(`${path}/photo`, query.slice(1), named, state.connected);
  const buying = shelves.toBuy.flatMap(({ items }) => items);
  const { done, all } = basketCount(buying, fold, atList);
  const nameOf = (id: string) => list.items.find(({ foodId }) => foodId === id)?.name ?? 'a food';
  const enter = (entry: Entered) => acts.enter({ ...entry, scope } as PressedInList);
  const standing = (foodId: string) => rowStanding(fold, foodId, atList);
  const isTaken = (foodId: string) =>
    pressed.find((each) => each.foodId === foodId)?.take ?? standing(foodId) !== 'open';

  const tick = (item: ShoppingItem) => {
    const { foodId } = item;
    setAsked(null);
    const take = !isTaken(foodId);
    const kept = take
      ? enter({ kind: 'ticked', foodId, payload: { packs: takenAsListed(item) } })
      : enter({ kind: 'unticked', foodId, payload: {} });
    const others = (before: Pressed) => before.filter((each) => each.foodId !== foodId);
    setPressed((before) => [...others(before), { foodId, take }]);
    void kept.finally(() => setPressed(others));
  };
  const partsOf = (item: ShoppingItem): ItemParts | null => {
    if (!buying.includes(item)) return null;
    const { foodId, name } = item;
    const is = standing(foodId);
    return {
      done: is !== 'open',
      tick: (
        <label className="grid size-14 place-items-center border-[1.5px] border-edge bg-raised has-checked:border-ink has-checked:bg-sunk print:hidden">
          <span className="unseen">In the basket: {name}</span>
          <input
            type="checkbox"
            className="size-8 accent-ink"
            checked={isTaken(foodId)}
            disabled={!state.ready || is === 'putAway'}
            onChange={() => tick(item)}
          />
        </label>
      ),
      under: (
        <RowStandingLine
          standing={is}
          event={fold.basket[foodId]}
          units={list.shelfUnits}
          name={name}
          ready={state.ready}
          asking={asked === foodId}
          onAsk={() => setAsked(foodId)}
        />
      ),
      below: asked === foodId && (
        <InsteadForm
          foodId={foodId}
          name={name}
          workOut={workOut}
          onCancel={() => setAsked(null)}
          onTake={(payload, photo) => {
            setAsked(null);
            setSaid(`Taken instead of ${name}: ${payload.name}.`);
            const keep = photo ? photos.add(photo) : Promise.resolve();
            void keep.then(() => enter({ kind: 'instead', foodId, payload }));
          }}
        />
      ),
    };
  };
  const fromCode = (foodIds: readonly string[]): string => {
    const open = buying.filter(
      ({ foodId }) => foodIds.includes(foodId) && standing(foodId) === 'open',
    );
    for (const item of open) tick(item);
    const came = open.length === 1 ? '1 tick came back' : `${open.length} ticks came back`;
    return open.length === foodIds.length
      ? `${came}.`
      : `${came}; the others were there already, or are in the kitchen.`;
  };

  return (
    <>
      <div className="print:hidden">
        <ConnectionLine
          waiting={here.length}
          connected={state.connected}
          letIn={state.letIn}
          lasts={state.lasts}
        />
        <p className="text-lead" role="status">
          <b>{done}</b> of {all} in the basket
        </p>
        <p role="status" className="unseen">
          {said}
        </p>
        <noscript>
          <p className="my-4 font-semibold">
            Ticks need JavaScript in this browser. The list can be printed, or carried along as a
            file.
          </p>
        </noscript>
      </div>
      <RefusedEntries
        waiting={state.waiting}
        wordsOf={({ kind, foodId }) =>
          foodId === null ? LIST_WORDS[kind] : `${LIST_WORDS[kind]}: ${nameOf(foodId)}`
        }
        onAgain={(id) => void acts.sendAgain(id)}
        onThrowAway={(id) => void acts.throwAway(id)}
      />
      <Items
        groups={[
          ...shelves.toBuy,
          ...(shelves.inStock.length > 0
            ? [{ title: 'Already in the kitchen', items: shelves.inStock }]
            : []),
        ]}
        units={list.shelfUnits}
        partsOf={partsOf}
      />
      <PutAwayPart
        list={list}
        fold={fold}
        ready={state.ready}
        photoSrc={photos.srcOf}
        onPutAway={(goods) => {
          for (const { id, foodId } of goods) {
            void enter({ kind: 'putAway', foodId, payload: { eventId: id } });
          }
        }}
        onMakeFood={async (event) => {
          const made = await makeFood(`${path}/taken-food${query}`, event.id);
          if (!made.ok) return made.why;
          const payload = { ...event.payload, takenFoodId: made.foodId };
          await enter({ kind: 'instead', foodId: event.foodId, payload });
          return null;
        }}
      />
      <PaidPart
        list={list}
        fold={fold}
        today={today}
        csvHref={`${path}/paid.csv${query}`}
        ready={state.ready}
        onPaid={(payload) => void enter({ kind: 'paid', foodId: null, payload })}
      />
      <CarryPart href={`${path}/list.html${query}`} foods={codeOrder(list)} onTicked={fromCode} />
    </>
  );
}

type Pressed = readonly { readonly foodId: string; readonly take: boolean }[];

/** An entry before it is of a list. */
type Entered = PressedInList extends infer E
  ? E extends unknown
    ? Omit<E, 'scope'>
    : never
  : never;

const UNHEARD = 'Not connected: this needs the program. What you entered is kept meanwhile.';

async function makeFood(
  address: string,
  eventId: string,
): Promise<
  { readonly ok: true; readonly foodId: string } | { readonly ok: false; readonly why: string }
> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ eventId }),
    });
    const { foodId, problems } = (await response.json()) as {
      readonly foodId?: string;
      readonly problems?: readonly { readonly message?: string }[];
    };
    if (response.ok && foodId !== undefined) return { ok: true, foodId };
    return { ok: false, why: problems?.[0]?.message ?? UNHEARD };
  } catch {
    return { ok: false, why: UNHEARD };
  }
}
