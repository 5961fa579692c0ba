import Link from 'next/link';
import { useState } from 'react';
import { Button } from '../../../../_ui/button';
import { lotsOf, toPutAway } from '#lib/shopping/put-away';
import { takenText } from '#lib/shopping/basket';
import type { ListState } from '#lib/shopping/fold-list';
import type { ListEvent } from '#lib/shopping/list-events';
import type { ShoppingList } from '#lib/shopping/shopping-list';

interface Props {
  readonly list: ShoppingList;
  readonly fold: ListState;
  readonly ready: boolean;
  readonly photoSrc: (sha256: string) => string;
  readonly onPutAway: (events: readonly Goods[]) => void;
  /** Makes what was taken instead a food of the pantry; what went wrong, or nothing. */
  readonly onMakeFood: (event: Instead) => Promise<string | null>;
}

type Goods = ReturnType<typeof toPutAway>[number];
type Instead = Extract<ListEvent, { kind: 'instead' }>;

/** What lies in the basket becomes stock at home, in one press. */
export function PutAwayPart({ list, fold, ready, photoSrc, onPutAway, onMakeFood }: Props) {
  const goods = toPutAway(fold);
  const known = goods.filter((event) => typeof lotsOf(event) !== 'string');
  const others = goods.filter((event) => typeof lotsOf(event) === 'string');
  const nameOf = (id: string) => list.items.find(({ foodId }) => foodId === id)?.name ?? 'a food';
  return (
    <section aria-labelledby="put-away" className="mt-8 print:hidden">
      <h2 id="put-away">At home</h2>
      {goods.length === 0 ? (
        <p className="text-soft">
          What lies in the basket is put away here, and is then in the pantry’s stock.
        </p>
      ) : (
        <>
          {known.length > 0 && (
            <div className="mt-2 max-w-xl">
              <Button
                type="button"
                tone="go"
                size="day"
                disabled={!ready}
                onClick={() => onPutAway(known)}
              >
                Put away: {known.length === 1 ? '1 food' : `${known.length} foods`}
              </Button>
            </div>
          )}
          <ul className="mt-3">
            {others.map((event) => (
              <li key={event.id} className="border-b border-line py-2">
                {event.kind === 'instead' && lotsOf(event) === 'food-open' ? (
                  <TakenInstead
                    event={event}
                    missed={nameOf(event.foodId)}
                    packs={takenText(event.payload.packs, list.shelfUnits)}
                    src={event.payload.photoSha256 && photoSrc(event.payload.photoSha256)}
                    onMakeFood={onMakeFood}
                  />
                ) : (
                  <>
                    {nameOf(event.foodId)}: nobody said how much it is.{' '}
                    <Link className="link" href={`/pantry/foods/${event.foodId}#stock`}>
                      Add it to the stock<span className="unseen"> of {nameOf(event.foodId)}</span>
                    </Link>
                  </>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface InsteadProps {
  readonly event: Instead;
  readonly missed: string;
  readonly packs: string | null;
  readonly src: string | null;
  readonly onMakeFood: Props['onMakeFood'];
}

/** It is no food of the pantry yet: with what was typed at the shelf it becomes one. */
function TakenInstead({ event, missed, packs, src, onMakeFood }: InsteadProps) {
  const [fault, setFault] = useState('');
  const { name } = event.payload;
  // Until the program has it, a photo is shown from this device's memory.
  const photoWaits = src?.startsWith('blob:') === true;
  return (
    <div className="grid gap-2">
      <p>
        <b className="font-semibold">{name}</b>
        {packs && <>, {packs}</>}, instead of {missed}, is no food of the pantry yet.
      </p>
      {src && (
        // A photo of the person's own, at an address of this program or of this page's memory.
        // eslint-disable-next-line @next/next/no-img-element
        <img src={src} alt={`The label of ${name}`} className="max-h-80 max-w-full" />
      )}
      {photoWaits && <p>Its photo is still on this device, and goes with the next connection.</p>}
      <Button
        type="button"
        size="day"
        disabled={photoWaits}
        onClick={() => {
          setFault('');
          void onMakeFood(event).then((wrong) => setFault(wrong ?? ''));
        }}
      >
        Make it a food of the pantry<span className="unseen">: {name}</span>
      </Button>
      <p role="alert" className="font-semibold text-hand">
        {fault}
      </p>
    </div>
  );
}
