import { AmountField } from '../../../../_ui/form/amount-field';
import { AreaField, ChoiceField, TextField, TickField } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import { DEGREES, Group, Number } from './step-fields';
import type { StepAsks, StepText } from './step-texts';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly step: StepText;
  readonly asks: StepAsks;
}

/** What only some steps have, folded away until one of it was said. */
export function StepMore({ form, state, step, asks }: Props) {
  const common = { form, state };
  return (
    <details open={step.more || state.problems.length > 0}>
      <summary className="link min-h-11 content-center">
        The evening before, what it touches, inside temperature, a length to choose, camera, note
      </summary>
      <div className="mt-3 grid gap-4">
        <TickField
          {...common}
          name="evening"
          label="done the evening before"
          initial={step.evening}
        />
        <Group legend="More">
          <ChoiceField
            {...common}
            name="contact"
            label="My hands touch"
            choices={asks.contacts}
            initial={step.contact}
          />
          {asks.appliances.length > 0 && (
            <ChoiceField
              {...common}
              name="applianceId"
              label="Runs in"
              choices={asks.appliances}
              initial={step.applianceId}
            />
          )}
          {asks.counter && (
            <Number
              {...common}
              name="counter"
              label="Places on the counter"
              initial={step.counter}
            />
          )}
          <AmountField
            {...common}
            name="core"
            label="Inside at least"
            initial={step.core}
            unitName="coreUnit"
            units={DEGREES}
            initialUnit={step.unit}
          />
        </Group>
        <Group legend="A length to choose">
          <Number
            {...common}
            name="chooseMin"
            label="The plan may take from"
            initial={step.chooseMin}
          />
          <Number {...common} name="chooseMax" label="to minutes" initial={step.chooseMax} />
        </Group>
        <div className="flex flex-wrap items-end gap-x-8 gap-y-4">
          <TickField {...common} name="onCamera" label="on camera" initial={step.onCamera} />
          <TickField {...common} name="daylight" label="needs daylight" initial={step.daylight} />
          {asks.cameraSetUp && (
            <TextField
              {...common}
              name="cameraSetUp"
              label="Where the camera stands"
              hint="In your words: over the board."
              initial={step.cameraSetUp}
            />
          )}
        </div>
        <AreaField {...common} name="note" label="Note" initial={step.note} control={{ rows: 2 }} />
      </div>
    </details>
  );
}
