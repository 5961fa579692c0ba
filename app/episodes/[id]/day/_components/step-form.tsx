'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { AmountField } from '../../../../_ui/form/amount-field';
import { ChoiceField, TextField, type Choice } from '../../../../_ui/form/field';
import { FormEnd } from './form-end';
import { DEGREES, Group, Number } from './step-fields';
import { StepMore } from './step-more';
import type { StepAsks, StepText } from './step-texts';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly step: StepText;
  readonly roles: readonly Choice[];
  readonly ovens: readonly Choice[];
  readonly asks: StepAsks;
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
  'contact',
  'applianceId',
  'counter',
  'cameraSetUp',
] as const;
const HANDS: readonly Choice[] = [
  { value: 'hands', words: 'my hands, all the time' },
  { value: 'alone', words: 'nothing: it runs by itself' },
];

/** A step: what it is, how long it takes, and what it needs meanwhile. */
export function StepForm({
  id,
  action,
  hidden,
  step,
  roles,
  ovens,
  asks,
  submit,
  cancelHref,
}: Props) {
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
          <StepMore form={id} state={state} step={step} asks={asks} />
          <FormEnd submit={submit} cancelHref={cancelHref} pending={pending} />
        </div>
      )}
    </FormFrame>
  );
}
