'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { ChoiceField, TextField, type Choice } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';

export interface ShotText {
  readonly title: string;
  readonly stepId: string;
  readonly framing: string;
  readonly length: string;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly shot: ShotText;
  /** Steps of the segment; the first choice is none. */
  readonly steps: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

/** A shot: what is seen, how it is framed, during which step, and how long it is in the edit. */
export function ShotForm({ id, action, hidden, shot, steps, submit, cancelHref }: Props) {
  return (
    <FormFrame
      id={id}
      action={action}
      fields={['title', 'stepId', 'framing', 'length']}
      hidden={hidden}
    >
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid gap-4 md:grid-cols-[2fr_1fr_2fr_1fr]">
              <TextField {...common} name="title" label="What is seen" initial={shot.title} />
              <TextField {...common} name="framing" label="Framing" initial={shot.framing} />
              <ChoiceField
                {...common}
                name="stepId"
                label="During"
                choices={steps}
                initial={shot.stepId}
              />
              <TextField
                {...common}
                name="length"
                label="Length, as 0:08"
                initial={shot.length}
                control={{ autoComplete: 'off' }}
              />
            </div>
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
