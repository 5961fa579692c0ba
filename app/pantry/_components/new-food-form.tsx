'use client';

import type { ReactNode } from 'react';
import { ChoiceField, TextField, TickField, type Choice } from '../../_ui/form/field';
import { errorsAt, type FormState } from '../../_ui/form/form-state';
import { ALLERGENS, SECTIONS } from '#lib/foods/food-lists';
import { ALLERGEN_WORDS } from '#lib/publish/allergen-list';
import { SECTION_WORDS } from '#lib/shopping/shopping-text';
import { addFood } from '../actions';
import { CONTAINS, MAY } from '../field-names';
import { LabelForm } from './label-form';
import { emptyLabel, type PanelRule } from './label-texts';
import { PackFields, PACK_FIELDS } from './pack-fields';

export const SECTION_CHOICES: readonly Choice[] = SECTIONS.map((value) => ({
  value,
  words: SECTION_WORDS[value],
}));

const FORM = 'new-food';

/** A new food from its package label. */
export function NewFoodForm({ rule }: { readonly rule: PanelRule }) {
  return (
    <LabelForm
      id={FORM}
      action={addFood}
      hidden={{}}
      rule={rule}
      texts={emptyLabel(rule)}
      submit="Add the food"
      cancelHref="/pantry"
      moreFields={['name', 'section', ...PACK_FIELDS]}
      before={(state) => (
        <div className="grid gap-4 md:grid-cols-[2fr_1fr]">
          <TextField
            form={FORM}
            name="name"
            label="Name, as you will look for it"
            state={state}
            control={{ placeholder: 'Skyr, plain, 0.2 % fat' }}
          />
          <ChoiceField
            form={FORM}
            name="section"
            label="In a shop it stands with"
            choices={SECTION_CHOICES}
            initial="other"
            state={state}
          />
        </div>
      )}
      after={(state) => (
        <div className="border-b border-edge">
          <Fold words="Allergens on the label">
            <Allergens legend="Contains" prefix={CONTAINS} state={state} />
            <Allergens legend="May contain" prefix={MAY} state={state} />
          </Fold>
          <Fold words="Pack and price" open={PACK_FIELDS.some((name) => told(state, name))}>
            <PackFields form={FORM} state={state} />
          </Fold>
        </div>
      )}
    />
  );
}

/** A part that a label may lack, folded away under its words; open where it has something to put right. */
function Fold({
  words,
  open = false,
  children,
}: {
  readonly words: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <details open={open || undefined} className="border-t border-edge">
      <summary className="link min-h-11 content-center font-slate text-head font-semibold">
        {words}
      </summary>
      <div className="pt-1 pb-4">{children}</div>
    </details>
  );
}

const told = (state: FormState, name: string) =>
  errorsAt(state, name).length > 0 || (state.typed[name] ?? '') !== '';

function Allergens({
  legend,
  prefix,
  state,
}: {
  readonly legend: string;
  readonly prefix: string;
  readonly state: FormState;
}) {
  return (
    <fieldset className="mb-2">
      <legend className="font-semibold">{legend}</legend>
      <div className="grid grid-cols-2 gap-x-6 md:grid-cols-5">
        {ALLERGENS.map((allergen) => (
          <TickField
            key={allergen}
            form={FORM}
            name={`${prefix}${allergen}`}
            label={ALLERGEN_WORDS[allergen]}
            state={state}
          />
        ))}
      </div>
    </fieldset>
  );
}
