'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { TextField } from '../../_ui/form/field';
import { keepsOpen } from '../stock-actions';

interface Props {
  readonly foodId: string;
  /** How long it keeps once opened, in words, with who says so. */
  readonly words: string;
  /** What the person said; null where the published chart holds, or nothing does. */
  readonly said: { readonly days: number; readonly source: string } | null;
}

/** How long a food keeps once opened: who says so, and the person's own word instead. */
export function KeepsOpenPart({ foodId, words, said }: Props) {
  const form = 'keeps-open';
  return (
    <details className="print:hidden">
      <summary className="link min-h-11 content-center">{words}</summary>
      <div className="pt-1 pb-3">
        <FormFrame
          id={form}
          action={keepsOpen}
          fields={['openedDays', 'openedSource']}
          hidden={{ foodId }}
        >
          {(state) => (
            <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[1fr_2fr_auto]">
              <TextField
                form={form}
                name="openedDays"
                label="Days once opened"
                state={state}
                initial={said === null ? '' : String(said.days)}
                control={{ inputMode: 'numeric', autoComplete: 'off' }}
              />
              <TextField
                form={form}
                name="openedSource"
                label="Who says so"
                state={state}
                initial={said?.source ?? ''}
                control={{ placeholder: 'the label' }}
              />
              <Button>Save</Button>
            </div>
          )}
        </FormFrame>
        <p className="mt-2 text-fine text-soft">
          Leave the days empty to go by the published chart again, where it has such a food. What
          smells or looks off is thrown away whatever a chart says; local rules come first.
        </p>
      </div>
    </details>
  );
}
