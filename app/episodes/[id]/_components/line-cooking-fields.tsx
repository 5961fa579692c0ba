import { ChoiceField, type Choice } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';

interface CookedProps {
  readonly form: string;
  readonly state: FormState;
  /** The ways that a cooked weight is known of; none where there is no choice. */
  readonly methods: readonly Choice[];
  readonly method: string;
  /** Which yield is used and where it comes from; null where raw and cooked do not differ. */
  readonly words: string | null;
}

/** How an ingredient is cooked, and by what its weight is turned from raw to cooked or back. */
export function CookedBy({ form, state, methods, method, words }: CookedProps) {
  // Weighed as its food is listed, it is turned into nothing else.
  if (words === null && method === '') return null;
  return (
    <div className="grid gap-1">
      {methods.length > 0 && (
        <ChoiceField
          form={form}
          name="cookMethod"
          label="Cooked"
          choices={methods}
          initial={method}
          state={state}
        />
      )}
      {words && <p className="text-fine text-soft">Turned from {words}.</p>}
    </div>
  );
}

interface RetentionProps {
  readonly form: string;
  readonly state: FormState;
  readonly choices: readonly Choice[];
  readonly code: string;
  readonly source: string;
}

/** What cooking leaves of vitamins and minerals: only some need it, so it stands folded away until it is set. */
export function Retention({ form, state, choices, code, source }: RetentionProps) {
  const open = code !== '' || (state.typed.retention ?? '') !== '';
  return (
    <details open={open}>
      <summary className="link min-h-11 content-center">Vitamins and minerals in cooking</summary>
      <div className="mt-2">
        <ChoiceField
          form={form}
          name="retention"
          label="Cooked as in the table of what is kept"
          hint={`Vitamins and minerals are multiplied by what the table says is kept; what it does not say is “at most”. Protein, fat and carbohydrate stay. ${source}.`}
          choices={choices}
          initial={code}
          state={state}
        />
      </div>
    </details>
  );
}
