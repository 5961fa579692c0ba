'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { TextField, TickField } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';

export interface AppointmentText {
  readonly title: string;
  readonly start: string;
  readonly end: string;
  readonly hands: boolean;
}

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly appointment: AppointmentText;
  readonly submit: string;
  readonly cancelHref: string;
}

/** Something of the day with a fixed time: what, from when to when, and whether the hands are free. */
export function AppointmentForm(props: Props) {
  const { id, action, hidden, appointment, submit, cancelHref } = props;
  return (
    <FormFrame id={id} action={action} fields={['title', 'start', 'end']} hidden={hidden}>
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[3fr_1fr_1fr]">
              <div className="max-md:col-span-2">
                <TextField {...common} name="title" label="What" initial={appointment.title} />
              </div>
              <TextField
                {...common}
                name="start"
                label="From, as 9:30"
                initial={appointment.start}
                control={{ autoComplete: 'off' }}
              />
              <TextField
                {...common}
                name="end"
                label="To"
                initial={appointment.end}
                control={{ autoComplete: 'off' }}
              />
            </div>
            <TickField
              {...common}
              name="hands"
              label="takes my hands: nothing else is done meanwhile"
              initial={appointment.hands}
            />
            <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
