'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { ChoiceField, type Choice } from '../../../../_ui/form/field';
import { saveOnDay } from '../on-day-actions';
import { FormEnd } from './form-end';

interface Props {
  readonly id: string;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly values: { readonly part: string; readonly fate: string; readonly filmedWhen: string };
  readonly parts: readonly Choice[];
  /** Empty where there is no food. */
  readonly fates: readonly Choice[];
  readonly times: readonly Choice[];
  readonly cancelHref: string;
}

/** What of a segment is done on the day, when it is filmed, and what becomes of its food. */
export function OnDayForm({ id, hidden, values, parts, fates, times, cancelHref }: Props) {
  return (
    <FormFrame
      id={id}
      action={saveOnDay}
      fields={['part', 'filmedWhen', ...(fates.length > 0 ? ['fate'] : [])]}
      hidden={hidden}
    >
      {(state, pending) => {
        const common = { form: id, state };
        return (
          <div className="grid gap-4">
            <div className="grid items-end gap-4 md:grid-cols-3">
              <ChoiceField
                {...common}
                name="part"
                label="Done on this day"
                choices={parts}
                initial={values.part}
              />
              <ChoiceField
                {...common}
                name="filmedWhen"
                label="Filmed"
                choices={times}
                initial={values.filmedWhen}
              />
              {fates.length > 0 && (
                <ChoiceField
                  {...common}
                  name="fate"
                  label="Its food is afterwards"
                  choices={fates}
                  initial={values.fate}
                />
              )}
            </div>
            <FormEnd submit="Save" cancelHref={cancelHref} pending={pending} />
          </div>
        );
      }}
    </FormFrame>
  );
}
