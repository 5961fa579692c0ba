'use client';

import { TextField } from '../../_ui/form/field';
import { errorsAt, type FormState } from '../../_ui/form/form-state';

const OFFER_FIELDS = ['offerCount', 'offerMost', 'offerUntil'];
export const PRICE_FIELDS = ['price', 'currency', 'shop', 'seenOn', ...OFFER_FIELDS];
const RARE_FIELDS = ['packStep', 'gtin'];
export const PACK_FIELDS = [
  'packName',
  'packG',
  'packMl',
  'packDrained',
  ...RARE_FIELDS,
  ...PRICE_FIELDS,
];

interface Props {
  readonly form: string;
  readonly state: FormState;
  /** Of the price typed last. */
  readonly currency?: string;
  /** Names of shops that are known, to choose from. */
  readonly shops?: readonly string[];
}

const DECIMAL = { inputMode: 'decimal', autoComplete: 'off' } as const;
const NUMERIC = { inputMode: 'numeric', autoComplete: 'off' } as const;

/** What a pack holds and costs; what few packs have is folded away. */
export function PackFields(props: Props) {
  const { form, state } = props;
  const common = { form, state };
  return (
    <div className="grid gap-4">
      <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3">
        <div className="max-md:col-span-2">
          <TextField
            {...common}
            name="packName"
            label="Pack"
            control={{ placeholder: 'Tub 450 g' }}
          />
        </div>
        <TextField {...common} name="packG" label="Holds, g" control={DECIMAL} />
        <TextField {...common} name="packMl" label="or ml" control={DECIMAL} />
        <TextField {...common} name="packDrained" label="Drained, g" control={DECIMAL} />
        <PriceField {...props} />
        <CurrencyField {...props} />
      </div>
      <details open={told(state) || undefined}>
        <summary className="link min-h-11 content-center">
          Shop, day, offer, loose by weight, barcode
        </summary>
        <div className="grid gap-4 pt-1">
          <WhereFields {...props} />
          <OfferFields {...props} />
          <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3">
            <TextField
              {...common}
              name="packStep"
              label="Loose, in steps of, g"
              hint="Sold by weight; the price is then for what it holds above."
              control={DECIMAL}
            />
            <TextField {...common} name="gtin" label="Number under its bars" control={NUMERIC} />
          </div>
        </div>
      </details>
    </div>
  );
}

function told(state: FormState): boolean {
  const names = ['shop', 'seenOn', ...OFFER_FIELDS, ...RARE_FIELDS];
  return names.some((name) => errorsAt(state, name).length > 0 || state.typed[name]);
}

export function PriceField({ form, state }: Props) {
  return <TextField form={form} state={state} name="price" label="Price" control={DECIMAL} />;
}

export function CurrencyField({ form, state, currency = '' }: Props) {
  return (
    <TextField
      form={form}
      state={state}
      name="currency"
      label="Currency"
      initial={currency}
      control={{ placeholder: 'USD', autoComplete: 'off' }}
    />
  );
}

/** In which shop a price was seen, and when. */
export function WhereFields({ form, state, shops = [] }: Props) {
  const list = `${form}-shops`;
  return (
    <div className="grid grid-cols-2 items-end gap-4">
      <TextField
        form={form}
        state={state}
        name="shop"
        label="Shop"
        control={{ list, autoComplete: 'off' }}
      />
      <datalist id={list}>
        {shops.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <TextField
        form={form}
        state={state}
        name="seenOn"
        label="Seen on, if not today"
        control={{ type: 'date' }}
      />
    </div>
  );
}

/** Several for one price, and how long that holds. */
export function OfferFields({ form, state }: Props) {
  const common = { form, state };
  return (
    <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3">
      <TextField {...common} name="offerCount" label="Price is for so many" control={NUMERIC} />
      <TextField {...common} name="offerMost" label="At most so often" control={NUMERIC} />
      <TextField {...common} name="offerUntil" label="Until" control={{ type: 'date' }} />
    </div>
  );
}
