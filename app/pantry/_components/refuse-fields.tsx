import { TextField, TickField } from '../../_ui/form/field';
import type { FormState } from '../../_ui/form/form-state';

export const REFUSE_FIELDS = ['refusePercent', 'refuseText', 'refuseInValues'];

/** Peel and trim of a food as its form shows it: all as text. */
export interface RefuseTexts {
  readonly percent: string;
  readonly text: string;
  readonly inValues: boolean;
}

export const NO_REFUSE: RefuseTexts = { percent: '', text: '', inValues: false };

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly refuse: RefuseTexts;
}

/** What is bought and not eaten, and whether the label's values are for the food with it. */
export function RefuseFields({ form, state, refuse }: Props) {
  return (
    <div className="grid gap-4">
      <p className="text-fine text-soft">
        Peel, shell, bone, ends: it comes off an ingredient that is weighed with it, and shopping
        buys it too.
      </p>
      <div className="grid items-end gap-4 md:grid-cols-[10rem_1fr]">
        <TextField
          form={form}
          state={state}
          name="refusePercent"
          label="Peel and trim, %"
          initial={refuse.percent}
          control={{ inputMode: 'numeric', autoComplete: 'off' }}
        />
        <TextField
          form={form}
          state={state}
          name="refuseText"
          label="What it is"
          initial={refuse.text}
          control={{ placeholder: 'bone' }}
        />
      </div>
      <TickField
        form={form}
        state={state}
        name="refuseInValues"
        label="The values are for the food as bought, with it (“with bone”)"
        initial={refuse.inValues}
      />
    </div>
  );
}
