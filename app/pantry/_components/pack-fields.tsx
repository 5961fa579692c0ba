'use client';

import { TextField } from '../../_ui/form/field';
import type { FormState } from '../../_ui/form/form-state';

export const PACK_FIELDS = ['packName', 'packG', 'packMl', 'packDrained', 'price', 'currency'];

/** What a pack holds and costs. */
export function PackFields({ form, state }: { readonly form: string; readonly state: FormState }) {
  const common = { form, state };
  const decimal = { inputMode: 'decimal', autoComplete: 'off' } as const;
  return (
    <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3">
      <div className="max-md:col-span-2">
        <TextField
          {...common}
          name="packName"
          label="Pack"
          control={{ placeholder: 'Tub 450 g' }}
        />
      </div>
      <TextField {...common} name="packG" label="Holds, g" control={decimal} />
      <TextField {...common} name="packMl" label="or ml" control={decimal} />
      <TextField {...common} name="packDrained" label="Drained, g" control={decimal} />
      <TextField {...common} name="price" label="Price today" control={decimal} />
      <TextField {...common} name="currency" label="Currency" control={{ placeholder: 'USD' }} />
    </div>
  );
}
