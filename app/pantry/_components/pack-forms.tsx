'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { addPack, addPrice } from '../pack-actions';
import {
  CurrencyField,
  OfferFields,
  PackFields,
  PACK_FIELDS,
  PriceField,
  PRICE_FIELDS,
  WhereFields,
} from './pack-fields';

interface Known {
  readonly shops: readonly string[];
  readonly currency: string;
}

interface PackProps extends Known {
  readonly foodId: string;
  readonly foodName: string;
}

/** A further pack of a food, with its price. */
export function PackForm({ foodId, foodName, shops, currency }: PackProps) {
  const form = 'pack';
  return (
    <FormFrame id={form} action={addPack} fields={PACK_FIELDS} hidden={{ foodId, foodName }}>
      {(state) => (
        <div className="grid gap-4">
          <PackFields form={form} state={state} shops={shops} currency={currency} />
          <div>
            <Button>Add the pack</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

/** One more price of a pack. */
export function PriceForm({ packId, shops, currency }: Known & { readonly packId: string }) {
  const form = `price-${packId}`;
  return (
    <FormFrame id={form} action={addPrice} fields={PRICE_FIELDS} hidden={{ packId }}>
      {(state) => (
        <div className="grid gap-4">
          <div className="grid grid-cols-2 items-end gap-4">
            <PriceField form={form} state={state} />
            <CurrencyField form={form} state={state} currency={currency} />
          </div>
          <WhereFields form={form} state={state} shops={shops} />
          <OfferFields form={form} state={state} />
          <div>
            <Button>Note the price</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
