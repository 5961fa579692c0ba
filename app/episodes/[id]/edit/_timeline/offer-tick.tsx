import type { ReactNode } from 'react';
import { fieldId, type FormState } from '../../../../_ui/form/form-state';

interface Props {
  readonly form: string;
  readonly name: string;
  readonly label: ReactNode;
  readonly state: FormState;
  /** Stands ticked at first, where it would replace nothing. */
  readonly initial: boolean;
  /** What the offer rests on, for the person to look at. */
  readonly children: ReactNode;
}

/** One offered place with its tick, and under it what it rests on. */
export function OfferTick({ form, name, label, state, initial, children }: Props) {
  const id = fieldId(form, name);
  const ticked = 'shown' in state.typed ? state.typed[name] === 'on' : initial;
  return (
    <li className="border-b border-line py-2">
      <label htmlFor={id} className="flex min-h-8 items-start gap-3">
        <input
          key={String(ticked)}
          id={id}
          name={name}
          type="checkbox"
          className="mt-1 size-5 shrink-0 accent-ink"
          defaultChecked={ticked}
          aria-describedby={`${id}-on`}
        />
        <span>{label}</span>
      </label>
      <div id={`${id}-on`} className="ml-8 text-fine">
        {children}
      </div>
    </li>
  );
}
