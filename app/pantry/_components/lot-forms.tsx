'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../_ui/form/field';
import type { StockLot } from '#lib/episode/stock-schema';
import { moveStock, saveLot } from '../stock-actions';

const MOVES: readonly Choice[] = [
  { value: 'used', words: 'used' },
  { value: 'bought', words: 'bought' },
  { value: 'counted', words: 'counted: so much is there' },
  { value: 'thrownAway', words: 'thrown away' },
];

/** What happened to a lot. It is added to the ledger; nothing in it is overwritten. */
export function MoveForm({ lotId }: { readonly lotId: string }) {
  const form = `move-${lotId}`;
  return (
    <FormFrame id={form} action={moveStock} fields={['kind', 'grams']} hidden={{ lotId }}>
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[1fr_1fr_auto]">
          <ChoiceField
            form={form}
            name="kind"
            label="What happened"
            choices={MOVES}
            initial="used"
            state={state}
          />
          <TextField
            form={form}
            name="grams"
            label="Grams"
            state={state}
            control={{ inputMode: 'decimal', autoComplete: 'off' }}
          />
          <Button tone="go">Note it</Button>
        </div>
      )}
    </FormFrame>
  );
}

interface LotProps {
  readonly lot: Pick<StockLot, 'id' | 'place' | 'useBy' | 'openedOn'>;
  readonly rev: number;
}

/** Where a lot stands and until when. */
export function LotForm({ lot, rev }: LotProps) {
  const form = `lot-${lot.id}`;
  return (
    <FormFrame
      id={form}
      action={saveLot}
      fields={['place', 'useBy', 'openedOn']}
      hidden={{ lotId: lot.id, rev }}
    >
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[2fr_1fr_1fr_auto]">
          <TextField form={form} name="place" label="Place" state={state} initial={lot.place} />
          <TextField
            form={form}
            name="useBy"
            label="Use by"
            state={state}
            initial={lot.useBy ?? ''}
            control={{ type: 'date' }}
          />
          <TextField
            form={form}
            name="openedOn"
            label="Opened on"
            state={state}
            initial={lot.openedOn ?? ''}
            control={{ type: 'date' }}
          />
          <Button>Save</Button>
        </div>
      )}
    </FormFrame>
  );
}
