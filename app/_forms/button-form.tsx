'use client';

import type { ReactNode } from 'react';
import { Button, type ButtonSize, type ButtonTone } from '../_ui/button';
import type { FormAction } from './parse-then-act';
import { useSentForm } from './use-sent-form';

interface Props {
  readonly action: FormAction;
  /** Sent by the button: the rows it is about. */
  readonly values: Readonly<Record<string, string | number>>;
  /** Says what it does where the words on the button need their place to be understood. */
  readonly label?: string;
  readonly tone?: ButtonTone;
  readonly size?: ButtonSize;
  /** Why there is nothing to do now. The button stays, and with it the focus of who has just pressed it. */
  readonly idle?: string | undefined;
  readonly children: ReactNode;
}

/** A single button that does one thing, and says so where it could not. It is a form and stands in no paragraph. */
export function ButtonForm({
  action,
  values,
  label,
  tone = 'bare',
  size = 'small',
  idle,
  children,
}: Props) {
  const { state, pending, form } = useSentForm(action);
  return (
    <form {...form} className="inline">
      {Object.entries(values).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <Button
        type={idle === undefined ? 'submit' : 'button'}
        tone={tone}
        size={size}
        aria-label={label}
        aria-busy={pending || undefined}
        aria-disabled={pending || idle !== undefined || undefined}
        title={idle}
      >
        {children}
      </Button>
      <span role="alert" className="text-fine font-semibold text-hand">
        {state.problems.map((problem) => problem.message).join(' ')}
      </span>
    </form>
  );
}
