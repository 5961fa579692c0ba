import { ChoiceField, TextField, TickField, type Choice } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';
import { LEFT_WORDS } from '#lib/episode/left-words';

const WHERE: readonly Choice[] = Object.entries(LEFT_WORDS).map(([value, words]) => ({
  value,
  words,
}));
const MADE: readonly Choice[] = [
  { value: 'alike', words: 'the same as the ingredient' },
  { value: 'fat', words: 'fat that ran out of it and was poured off' },
];

interface WhereProps {
  readonly form: string;
  readonly state: FormState;
  readonly where: string;
  readonly made: string;
}

/** Where it stays, and what of it: the form of an ingredient and its scale ask alike. */
export function LeftWhere({ form, state, where, made }: WhereProps) {
  return (
    <div className="grid gap-4">
      <ChoiceField
        form={form}
        name="leftWhere"
        label="It stays in"
        choices={WHERE}
        initial={where}
        state={state}
      />
      <ChoiceField
        form={form}
        name="leftMade"
        label="What stays is"
        choices={MADE}
        initial={made}
        state={state}
      />
    </div>
  );
}

interface Props extends WhereProps {
  readonly grams: string;
  readonly weighed: boolean;
}

/** What of an ingredient stays behind and is not eaten: nothing, grams or a range, or what a scale says. */
export function LineLeftFields({ form, state, where, made, grams, weighed }: Props) {
  return (
    <>
      <TextField
        form={form}
        name="leftBehind"
        label="Left behind, grams"
        hint="In the pan, tray or bowl, and not eaten: 3, 3 ± 1, 2-4. Empty for none."
        initial={grams}
        state={state}
      />
      <TickField
        form={form}
        name="leftWeighed"
        label="What is left is weighed: by “Weigh”, at “what is left”"
        initial={weighed}
        state={state}
      />
      <LeftWhere form={form} state={state} where={where} made={made} />
    </>
  );
}
