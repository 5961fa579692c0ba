'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { TextField, TickField } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';

export interface LotText {
  readonly name: string;
  readonly limit: string;
  readonly thrownAway: boolean;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly lot: LotText;
  readonly limitHint: string;
  readonly submit: string;
  readonly cancelHref: string;
}

/** Food that must not stand out long: what it is, its limit, and whether anybody eats it. */
export function LotForm({ id, action, hidden, lot, limitHint, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={['name', 'limit']} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid items-end gap-4 md:grid-cols-[3fr_2fr]">
              <TextField {...common} name="name" label="Food" initial={lot.name} />
              <TextField
                {...common}
                name="limit"
                label="Out at most, minutes in all"
                hint={limitHint}
                initial={lot.limit}
                control={{ inputMode: 'decimal', autoComplete: 'off' }}
              />
            </div>
            <TickField
              {...common}
              name="thrownAway"
              label="for the picture only, thrown away after"
              initial={lot.thrownAway}
            />
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
