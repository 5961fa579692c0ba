'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { ChoiceField, TextField } from '../../_ui/form/field';
import { addShop, saveShelf, saveShop } from '../shop-actions';

type Hidden = Readonly<Record<string, string | number>>;

const UNITS = [
  { value: 'metric', words: 'g and kg' },
  { value: 'us', words: 'oz and lb' },
] as const;

interface ShelfProps {
  readonly hidden: Hidden;
  readonly values: { readonly shelfUnits: string; readonly drift: string };
}

/** How shopping lists are written. */
export function ShelfForm({ hidden, values }: ShelfProps) {
  const form = 'shelf';
  return (
    <FormFrame id={form} action={saveShelf} fields={['shelfUnits', 'drift']} hidden={hidden}>
      {(state) => (
        <div className="grid gap-4">
          <div className="grid items-end gap-4 sm:grid-cols-2 md:max-w-3xl">
            <ChoiceField
              form={form}
              name="shelfUnits"
              label="Shelf labels are in"
              choices={UNITS}
              initial={values.shelfUnits}
              state={state}
            />
            <TextField
              form={form}
              name="drift"
              label="Prices move in a year by, %"
              hint="To either side, once a price is a month old. Common practice, no source."
              initial={values.drift}
              state={state}
              control={{ inputMode: 'decimal', autoComplete: 'off' }}
            />
          </div>
          <div>
            <Button>Save how lists are written</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

interface ShopProps {
  readonly id: string;
  readonly name: string;
  readonly hidden: Hidden;
  readonly isNew?: boolean;
}

/** A shop by its name. */
export function ShopForm({ id, name, hidden, isNew = false }: ShopProps) {
  return (
    <FormFrame id={id} action={isNew ? addShop : saveShop} fields={['name']} hidden={hidden}>
      {(state) => (
        <div className="grid grid-cols-[1fr_auto] items-end gap-4 md:max-w-xl">
          <TextField form={id} name="name" label="Shop" initial={name} state={state} />
          <Button>{isNew ? 'Add the shop' : 'Save its name'}</Button>
        </div>
      )}
    </FormFrame>
  );
}
