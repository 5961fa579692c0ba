import type { ReactNode } from 'react';
import { TextField, type Choice } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';

export const DEGREES: readonly Choice[] = [
  { value: 'C', words: '°C' },
  { value: 'F', words: '°F' },
];

/** Fields of a step that belong together, side by side. */
export function Group({
  legend,
  children,
}: {
  readonly legend: string;
  readonly children: ReactNode;
}) {
  return (
    <fieldset>
      <legend className="mb-1 text-fine text-soft">{legend}</legend>
      <div className="grid grid-cols-2 items-start gap-4 md:grid-cols-4">{children}</div>
    </fieldset>
  );
}

/** A number as it is typed. */
export function Number(props: {
  readonly form: string;
  readonly name: string;
  readonly label: string;
  readonly state: FormState;
  readonly initial: string;
}) {
  return <TextField {...props} control={{ inputMode: 'decimal', autoComplete: 'off' }} />;
}
