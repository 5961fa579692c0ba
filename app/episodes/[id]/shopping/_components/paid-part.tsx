import { useState } from 'react';
import { Button, ButtonLink } from '../../../../_ui/button';
import { CONTROL } from '../../../../_ui/form/field';
import { paidBesideCost, paidRows, paidText } from '#lib/shopping/basket';
import type { ListState } from '#lib/shopping/fold-list';
import type { PaidEvent } from '#lib/shopping/list-events';
import { readPaid } from '#lib/shopping/shop-typed';
import type { ShoppingList } from '#lib/shopping/shopping-list';
import { priceText } from '#lib/shopping/shopping-text';
import { printDay } from '#lib/units/print-date';

interface Props {
  readonly list: ShoppingList;
  readonly fold: ListState;
  readonly today: string;
  readonly csvHref: string;
  readonly ready: boolean;
  readonly onPaid: (payload: PaidEvent['payload']) => void;
}

/** What was paid, by shop; beside it what was foreseen. */
export function PaidPart({ list, fold, today, csvHref, ready, onPaid }: Props) {
  const { shops, cost } = list;
  const [texts, setTexts] = useState({
    amount: '',
    currency: cost?.currency ?? '',
    on: today,
    shopId: shops[0]?.id ?? '',
  });
  const [faults, setFaults] = useState<Readonly<Record<string, string>>>({});
  const rows = paidRows(fold);
  const total = paidText(rows);
  const beside = paidBesideCost(rows, cost);
  const set = (part: Partial<typeof texts>) => setTexts((before) => ({ ...before, ...part }));
  const keep = () => {
    const read = readPaid(texts);
    setFaults(read.ok ? {} : read.faults);
    if (!read.ok) return;
    onPaid(read.value);
    set({ amount: '' });
  };
  const shopName = (id: string | null) => shops.find((shop) => shop.id === id)?.name;
  return (
    <section aria-labelledby="paid" className="mt-8 print:hidden">
      <h2 id="paid">Paid</h2>
      {total === null ? (
        <p className="text-soft">Nothing yet.</p>
      ) : (
        <>
          <p className="text-lead">
            <b>{total}</b>
            {beside && <>, {beside}</>}
          </p>
          <ul>
            {rows.map((row) => (
              <li
                key={`${row.shopId ?? ''} ${row.foodId ?? ''}`}
                className="flex flex-wrap items-center gap-x-4 border-b border-line"
              >
                {printDay(row.on)}
                {row.shopId !== null && <>, {shopName(row.shopId) ?? 'a shop'}</>}:{' '}
                {priceText(row.minor, row.currency)}
                <button
                  type="button"
                  className="link min-h-11"
                  onClick={() => {
                    const { shopId, currency, on } = row;
                    onPaid({ shopId, minor: null, currency, on });
                  }}
                >
                  Take back<span className="unseen"> what was paid {printDay(row.on)}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <form
        className="mt-2 grid max-w-xl grid-cols-2 items-start gap-3"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        {(
          [
            ['amount', 'Sum on the receipt', 'text'],
            ['currency', 'Currency', 'text'],
            ['on', 'On', 'date'],
          ] as const
        ).map(([name, label, type]) => (
          <div key={name} className="min-w-0">
            <label htmlFor={`paid-${name}`} className="mb-1 block font-semibold">
              {label}
            </label>
            <input
              id={`paid-${name}`}
              type={type}
              className={`${CONTROL} min-h-14`}
              value={texts[name]}
              inputMode={name === 'amount' ? 'decimal' : undefined}
              autoComplete="off"
              aria-invalid={faults[name] ? true : undefined}
              aria-describedby={faults[name] ? `paid-${name}-error` : undefined}
              onChange={(event) => set({ [name]: event.currentTarget.value })}
            />
            {faults[name] && (
              <p id={`paid-${name}-error`} className="mt-1 text-fine font-semibold text-hand">
                {faults[name]}
              </p>
            )}
          </div>
        ))}
        {shops.length > 0 && (
          <div className="min-w-0">
            <label htmlFor="paid-shop" className="mb-1 block font-semibold">
              Shop
            </label>
            <select
              id="paid-shop"
              className={`${CONTROL} min-h-14`}
              value={texts.shopId}
              onChange={(event) => set({ shopId: event.currentTarget.value })}
            >
              {shops.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </div>
        )}
        <div className="col-span-2 flex flex-wrap gap-3">
          <Button disabled={!ready}>Keep what was paid</Button>
          {total !== null && (
            <ButtonLink href={csvHref} download>
              Paid as CSV
            </ButtonLink>
          )}
        </div>
      </form>
    </section>
  );
}
