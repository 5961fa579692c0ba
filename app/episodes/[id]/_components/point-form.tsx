'use client';

import { FormFrame, type KeptTyping } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { AreaField } from '../../../_ui/form/field';
import { SaveOrLeave } from './save-or-leave';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly text: string;
  readonly submit: string;
  readonly cancelHref?: string;
  /** Left out where the form is for something new. */
  readonly kept?: KeptTyping | null | undefined;
}

/** A sentence to say. Its numbers are bound in brackets and never typed. */
export function PointForm({ id, action, hidden, text, submit, cancelHref, kept }: Props) {
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={['text']} kept={kept}>
      {(state) => (
        <div className="grid gap-3">
          <AreaField
            form={id}
            name="text"
            label="To say"
            hint="Bind numbers instead of typing them: [energy, whole], [protein, each], [fibre, day]."
            initial={text}
            state={state}
            control={{ rows: 3 }}
          />
          <SaveOrLeave submit={submit} cancelHref={cancelHref} />
        </div>
      )}
    </FormFrame>
  );
}
