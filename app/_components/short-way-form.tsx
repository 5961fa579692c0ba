'use client';

import { FormFrame } from '../_forms/form-frame';
import { Button } from '../_ui/button';
import { AreaField, TextField } from '../_ui/form/field';
import { beginShort } from '../actions';

const FORM = 'short-way';
const EXAMPLE = '500 g ground turkey\n2 eggs\n80 g rolled oats\n1 tbsp olive oil\nsalt to taste';

/**
 * A number now: ingredients and portions, and nothing else is asked. `first` where it is the only thing on the
 * page, which can then be typed into at once.
 */
export function ShortWayForm({ first = false }: { readonly first?: boolean }) {
  return (
    <FormFrame id={FORM} action={beginShort} fields={['list', 'portions', 'title']}>
      {(state, pending) => (
        <div className="grid gap-4">
          <AreaField
            form={FORM}
            name="list"
            label="Ingredients of one dish"
            hint="Paste them as they stand on your note, one on each line."
            state={state}
            control={{ rows: 7, placeholder: EXAMPLE, spellCheck: false, autoFocus: first }}
          />
          <div className="grid gap-4 md:grid-cols-[7rem_minmax(0,1fr)]">
            <TextField
              form={FORM}
              name="portions"
              label="Portions"
              initial="1"
              state={state}
              control={{ inputMode: 'numeric', autoComplete: 'off' }}
            />
            <TextField
              form={FORM}
              name="title"
              label="Name, if it has one"
              state={state}
              control={{ autoComplete: 'off' }}
            />
          </div>
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Work out the numbers
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
