import { CONTROL, Field, type Choice, type FieldProps } from './field';

interface Props extends FieldProps {
  readonly initial?: string;
  /** The unit's own field; with one choice the unit is plain text. */
  readonly unitName: string;
  readonly units: readonly Choice[];
  readonly initialUnit?: string;
}

/** An amount and its unit side by side: a number is never asked for, or shown, without its unit. */
export function AmountField({ initial = '', unitName, units, initialUnit, ...field }: Props) {
  const { form, label, state } = field;
  const only = units.length === 1 ? units[0] : undefined;
  const chosen = state?.typed[unitName] ?? initialUnit ?? units[0]?.value ?? '';
  return (
    <div className="flex items-end gap-1.5">
      <div className="min-w-20 flex-1">
        <Field {...field} label={only && !field.quiet ? `${label}, ${only.words}` : label}>
          {(wired) => (
            <input
              {...wired}
              className={CONTROL}
              type="text"
              inputMode="decimal"
              autoComplete="off"
              defaultValue={state?.typed[field.name] ?? initial}
            />
          )}
        </Field>
      </div>
      {only ? (
        <input type="hidden" name={unitName} value={only.value} />
      ) : (
        <Field
          form={form}
          name={unitName}
          label={`Unit of ${label.toLowerCase()}`}
          state={state}
          quiet
        >
          {(wired) => (
            <select key={chosen} {...wired} className={CONTROL} defaultValue={chosen}>
              {units.map((unit) => (
                <option key={unit.value} value={unit.value}>
                  {unit.words}
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
    </div>
  );
}
