'use client';

import { FormFrame, type KeptTyping } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { ChoiceField, TextField, type Choice } from '../../../_ui/form/field';
import { SaveOrLeave } from './save-or-leave';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly kind: 'recipe' | 'talk';
  readonly title: string;
  readonly planned: string;
  readonly batches: string;
  readonly spareTakes?: string;
  readonly spareScope?: string;
  readonly pickupReserve?: string;
  readonly submit: string;
  readonly cancelHref?: string;
  /** Left out where the form is for something new. */
  readonly kept?: KeptTyping | null | undefined;
}

const FIELDS = ['title', 'planned', 'batches', 'spareTakes', 'spareScope', 'pickupReserve'];
const SPARE_SCOPES: readonly Choice[] = [
  { value: 'spoiltLines', words: 'what a take spoils' },
  { value: 'whole', words: 'the whole dish' },
];

/** Adds or changes a segment: its title and length, and for a dish how often it is made. */
export function SegmentForm({
  id,
  action,
  hidden,
  kind,
  submit,
  cancelHref,
  kept,
  ...texts
}: Props) {
  return (
    <FormFrame id={id} action={action} hidden={{ ...hidden, kind }} fields={FIELDS} kept={kept}>
      {(state) => (
        <div className="grid gap-4">
          <div className="grid gap-4 md:grid-cols-[2fr_1fr]">
            <TextField
              form={id}
              name="title"
              label={kind === 'recipe' ? 'Dish' : 'Talk'}
              initial={texts.title}
              state={state}
            />
            <TextField
              form={id}
              name="planned"
              label="Length in the cut"
              hint="As 3:25."
              initial={texts.planned}
              state={state}
            />
          </div>
          {kind === 'recipe' && (
            <div className="grid gap-4 md:grid-cols-2">
              <TextField
                form={id}
                name="batches"
                label="Made how many times"
                hint="For shopping and the day."
                initial={texts.batches}
                state={state}
              />
              <TextField
                form={id}
                name="spareTakes"
                label="Spare takes to buy for"
                hint="Food for so many more is bought. 0 for none."
                initial={texts.spareTakes ?? '0'}
                state={state}
              />
              <ChoiceField
                form={id}
                name="spareScope"
                label="A spare take needs again"
                hint="What a take spoils is said at each ingredient."
                choices={SPARE_SCOPES}
                initial={texts.spareScope ?? 'spoiltLines'}
                state={state}
              />
              <TextField
                form={id}
                name="pickupReserve"
                label="Kept for pickups"
                hint="Food for so many pickups on another day is bought too: what a take needs again."
                initial={texts.pickupReserve ?? '0'}
                state={state}
              />
            </div>
          )}
          <SaveOrLeave submit={submit} cancelHref={cancelHref} tone="go" />
        </div>
      )}
    </FormFrame>
  );
}
