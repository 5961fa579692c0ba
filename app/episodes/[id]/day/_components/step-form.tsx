'use client';

import Link from 'next/link';
import type { ReactNode } from 'react';
import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { Button } from '../../../../_ui/button';
import { AmountField } from '../../../../_ui/form/amount-field';
import {
  AreaField,
  ChoiceField,
  TextField,
  TickField,
  type Choice,
} from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import type { StepText } from './step-texts';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly step: StepText;
  readonly roles: readonly Choice[];
  readonly ovens: readonly Choice[];
  readonly submit: string;
  readonly cancelHref: string;
}

const FIELDS = [
  'title',
  'role',
  'low',
  'usual',
  'high',
  'hands',
  'burners',
  'racks',
  'ovenId',
  'oven',
  'core',
  'rest',
  'chooseMin',
  'chooseMax',
  'note',
] as const;
const DEGREES: readonly Choice[] = [
  { value: 'C', words: '°C' },
  { value: 'F', words: '°F' },
];
const HANDS: readonly Choice[] = [
  { value: 'hands', words: 'my hands, all the time' },
  { value: 'alone', words: 'nothing: it runs by itself' },
];

/** A step: what it is, how long it takes, and what it needs meanwhile. */
export function StepForm({ id, action, hidden, step, roles, ovens, submit, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={action} fields={FIELDS} hidden={hidden}>
      {(state, pending) => (
        <div className="grid gap-4">
          <div className="grid gap-4 md:grid-cols-[3fr_1fr_1.5fr]">
            <TextField
              form={id}
              name="title"
              label="What to do"
              state={state}
              initial={step.title}
            />
            <ChoiceField
              form={id}
              name="role"
              label="Kind"
              state={state}
              choices={roles}
              initial={step.role}
            />
            <ChoiceField
              form={id}
              name="hands"
              label="It takes"
              state={state}
              choices={HANDS}
              initial={step.hands}
            />
          </div>
          <Group legend="Minutes">
            <Number form={id} state={state} name="low" label="Shortest" initial={step.low} />
            <Number form={id} state={state} name="usual" label="Usual" initial={step.usual} />
            <Number form={id} state={state} name="high" label="Longest" initial={step.high} />
            <Number form={id} state={state} name="rest" label="Rest after" initial={step.rest} />
          </Group>
          <Group legend="Meanwhile it needs">
            <Number form={id} state={state} name="burners" label="Burners" initial={step.burners} />
            <ChoiceField
              form={id}
              name="ovenId"
              label="Oven"
              state={state}
              choices={ovens}
              initial={step.ovenId}
            />
            <AmountField
              form={id}
              name="oven"
              label="Oven at"
              state={state}
              initial={step.oven}
              unitName="ovenUnit"
              units={DEGREES}
              initialUnit={step.unit}
            />
            <Number form={id} state={state} name="racks" label="Racks" initial={step.racks} />
          </Group>
          <details open={step.more || state.problems.length > 0}>
            <summary className="link min-h-11 content-center">
              Inside temperature, a length to choose, camera, note
            </summary>
            <div className="mt-3 grid gap-4">
              <Group legend="More">
                <AmountField
                  form={id}
                  name="core"
                  label="Inside at least"
                  state={state}
                  initial={step.core}
                  unitName="coreUnit"
                  units={DEGREES}
                  initialUnit={step.unit}
                />
                <Number
                  form={id}
                  state={state}
                  name="chooseMin"
                  label="The plan may take from"
                  initial={step.chooseMin}
                />
                <Number
                  form={id}
                  state={state}
                  name="chooseMax"
                  label="to minutes"
                  initial={step.chooseMax}
                />
              </Group>
              <div className="flex flex-wrap gap-x-8">
                <TickField
                  form={id}
                  name="onCamera"
                  label="on camera"
                  state={state}
                  initial={step.onCamera}
                />
                <TickField
                  form={id}
                  name="daylight"
                  label="needs daylight"
                  state={state}
                  initial={step.daylight}
                />
              </div>
              <AreaField
                form={id}
                name="note"
                label="Note"
                state={state}
                initial={step.note}
                control={{ rows: 2 }}
              />
            </div>
          </details>
          <p className="flex flex-wrap items-center gap-3">
            <Button tone="go" aria-disabled={pending || undefined}>
              {submit}
            </Button>
            <Link href={cancelHref} className="link inline-flex min-h-14 items-center px-2">
              Leave as it was
            </Link>
          </p>
        </div>
      )}
    </FormFrame>
  );
}

function Group({ legend, children }: { readonly legend: string; readonly children: ReactNode }) {
  return (
    <fieldset>
      <legend className="mb-1 text-fine text-soft">{legend}</legend>
      <div className="grid grid-cols-2 items-start gap-4 md:grid-cols-4">{children}</div>
    </fieldset>
  );
}

function Number(props: {
  readonly form: string;
  readonly name: string;
  readonly label: string;
  readonly state: FormState;
  readonly initial: string;
}) {
  return <TextField {...props} control={{ inputMode: 'decimal', autoComplete: 'off' }} />;
}
