import { AmountField } from '../../_ui/form/amount-field';
import { ErrorList } from '../../_ui/form/error-list';
import { AreaField, ChoiceField, CONTROL, Field, TextField, TickField } from '../../_ui/form/field';
import { UNTOUCHED, type FormState } from '../../_ui/form/form-state';
import type { Specimen } from './specimen';
import { TriedForm } from './tried';

const UNITS = [
  { value: 'g', words: 'g' },
  { value: 'cup', words: 'cup' },
];
const REFUSED: FormState = {
  ...UNTOUCHED,
  attempt: 1,
  problems: [
    { path: 'grams', code: 'not-a-number', message: '“12 o” is no number: write it as 120.' },
    { path: 'title', code: 'too-short', message: 'The title is empty.' },
  ],
  typed: { grams: '12 o', title: '', unit: 'cup' },
};

export const ENTRY: readonly Specimen[] = [
  {
    name: 'Fields',
    when: 'Every control has a label, and a hint where the label does not say enough.',
    show: (key) => (
      <div className="grid gap-4">
        <TextField
          form={key}
          name="title"
          label="Title"
          hint="As you would say it."
          initial="Day"
        />
        <TextField form={key} name="date" label="Publish on" control={{ type: 'date' }} />
        <AreaField form={key} name="hook" label="Hook" control={{ rows: 2 }} />
        <ChoiceField
          form={key}
          name="region"
          label="Numbers for"
          choices={[
            { value: 'US', words: 'US labels' },
            { value: 'EU', words: 'EU labels' },
          ]}
        />
        <TickField form={key} name="bought" label="The amount is with peel" initial />
        <Field form={key} name="quiet" label="Its label is only read aloud" quiet>
          {(wired) => (
            <input
              {...wired}
              className={CONTROL}
              data-shown="focus"
              placeholder="focused, with a quiet label"
            />
          )}
        </Field>
      </div>
    ),
  },
  {
    name: 'Amount',
    when: 'For every number: its unit stands beside it, to choose or as a word.',
    show: (key) => (
      <div className="grid gap-4">
        <AmountField
          form={key}
          name="amount"
          label="Amount"
          unitName="unit"
          units={UNITS}
          initial="150"
        />
        <AmountField
          form={key}
          name="weight"
          label="On the scale"
          unitName="of"
          units={UNITS.slice(0, 1)}
        />
      </div>
    ),
  },
  {
    name: 'Refused',
    when: 'After a form was refused: all faults in one list that leads to the fields, each again at its field, what was typed kept.',
    show: (key) => (
      <>
        <ErrorList form={key} state={REFUSED} fields={['grams', 'title']} />
        <div className="grid gap-4">
          <AmountField
            form={key}
            name="grams"
            label="Amount"
            unitName="unit"
            units={UNITS}
            state={REFUSED}
          />
          <TextField form={key} name="title" label="Title" hint="A few words." state={REFUSED} />
        </div>
      </>
    ),
  },
  {
    name: 'Form',
    when: 'The frame of every form. Send it empty and with words: focus goes back to the first field once it was accepted.',
    show: (key) => <TriedForm id={key} />,
  },
];
