import { ChoiceField, type Choice } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';

/** From the start or end of one step to that of another, as a form shows it. */
export interface StepEndsText {
  readonly fromStepId: string;
  readonly fromAnchor: string;
  readonly toStepId: string;
  readonly toAnchor: string;
}

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly ends: StepEndsText;
  /** Every step of the episode. */
  readonly steps: readonly Choice[];
  /** What stands over the first step and over the second. */
  readonly from: string;
  readonly to: string;
}

const ANCHORS: readonly Choice[] = [
  { value: 'start', words: 'its start' },
  { value: 'end', words: 'its end' },
];

/** The fields of two steps, each with which of its ends is meant. */
export function StepEnds({ form, state, ends, steps, from, to }: Props) {
  const common = { form, state };
  return (
    <div className="grid grid-cols-[1fr_7.5rem] items-end gap-4 md:grid-cols-[3fr_1fr_3fr_1fr]">
      <ChoiceField
        {...common}
        name="fromStepId"
        label={from}
        choices={steps}
        initial={ends.fromStepId}
      />
      <ChoiceField
        {...common}
        name="fromAnchor"
        label="counted from"
        choices={ANCHORS}
        initial={ends.fromAnchor}
      />
      <ChoiceField {...common} name="toStepId" label={to} choices={steps} initial={ends.toStepId} />
      <ChoiceField
        {...common}
        name="toAnchor"
        label="counted to"
        choices={ANCHORS}
        initial={ends.toAnchor}
      />
    </div>
  );
}
