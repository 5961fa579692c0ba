import { TextField } from '../../_ui/form/field';
import { errorsAt, fieldId, type FormState } from '../../_ui/form/form-state';

interface Props {
  readonly form: string;
  readonly state: FormState;
}

export const WEIGHT_FIELDS = ['raw', 'cooked', 'method', 'sure'];

/** A person's own raw and cooked weight, and how it was cooked. */
export function WeightFields({
  form,
  state,
  methods,
}: Props & { readonly methods: readonly string[] }) {
  const decimal = { inputMode: 'decimal', autoComplete: 'off' } as const;
  return (
    <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3">
      <TextField form={form} state={state} name="raw" label="Raw, g" control={decimal} />
      <TextField form={form} state={state} name="cooked" label="Cooked, g" control={decimal} />
      <div className="max-md:col-span-2">
        <MethodField form={form} state={state} methods={methods} />
      </div>
    </div>
  );
}

/** How it was cooked, in the person's words; the food's known ways are proposed. */
export function MethodField({
  form,
  state,
  methods,
  initial = '',
}: Props & { readonly methods: readonly string[]; readonly initial?: string }) {
  const list = `${form}-methods`;
  return (
    <>
      <TextField
        form={form}
        state={state}
        name="method"
        label="Cooked how"
        initial={initial}
        control={{ placeholder: 'pan, oven, boiled', list, autoComplete: 'off' }}
      />
      <datalist id={list}>
        {methods.map((method) => (
          <option key={method} value={method} />
        ))}
      </datalist>
    </>
  );
}

/** The question about an odd cooked weight, once it was asked; ticked, it is kept as it is. */
export function SureTick({ form, state }: Props) {
  const [asked] = errorsAt(state, 'sure');
  if (!asked && state.typed.sure !== 'on') return null;
  const id = fieldId(form, 'sure');
  return (
    <div>
      <label htmlFor={id} className="flex min-h-11 items-center gap-3 max-md:min-h-14">
        <input
          key={state.attempt}
          id={id}
          name="sure"
          type="checkbox"
          className="size-5 shrink-0 accent-ink"
          aria-describedby={asked ? `${id}-error` : undefined}
          aria-invalid={asked ? true : undefined}
          defaultChecked={state.typed.sure === 'on'}
        />
        Yes, these weights are right
      </label>
      {asked && (
        <p id={`${id}-error`} className="text-fine font-semibold text-hand">
          {asked.message}
        </p>
      )}
    </div>
  );
}
