'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../_ui/form/field';
import { ALLERGENS } from '#lib/foods/food-lists';
import { ALLERGEN_WORDS } from '#lib/publish/allergen-list';
import { addAllergen, saveFood } from '../actions';
import { addLot } from '../stock-actions';
import { SECTION_CHOICES } from './new-food-form';

interface OfFood {
  readonly foodId: string;
}

/** Name and section of an own food. */
export function FoodForm({
  foodId,
  rev,
  name,
  section,
}: OfFood & { readonly rev: number; readonly name: string; readonly section: string }) {
  const form = 'food';
  return (
    <FormFrame id={form} action={saveFood} fields={['name', 'section']} hidden={{ foodId, rev }}>
      {(state) => (
        <div className="grid items-end gap-4 md:grid-cols-[2fr_1fr_auto]">
          <TextField form={form} name="name" label="Name" state={state} initial={name} />
          <ChoiceField
            form={form}
            name="section"
            label="In a shop it stands with"
            choices={SECTION_CHOICES}
            initial={section}
            state={state}
          />
          <Button>Save</Button>
        </div>
      )}
    </FormFrame>
  );
}

const ALLERGEN_CHOICES: readonly Choice[] = ALLERGENS.map((value) => ({
  value,
  words: ALLERGEN_WORDS[value],
}));
const STANDINGS: readonly Choice[] = [
  { value: 'declared', words: 'contains it, says the label' },
  { value: 'mayContain', words: 'may contain it, says the label' },
  { value: 'confirmed', words: 'contains it, I know' },
  { value: 'denied', words: 'not in it, I know' },
];

/** One more allergen of a food. */
export function AllergenForm({ foodId }: OfFood) {
  const form = 'allergen';
  return (
    <FormFrame id={form} action={addAllergen} fields={['allergen', 'standing']} hidden={{ foodId }}>
      {(state) => (
        <div className="grid items-end gap-4 md:grid-cols-[1fr_1fr_auto]">
          <ChoiceField
            form={form}
            name="allergen"
            label="Allergen"
            choices={ALLERGEN_CHOICES}
            initial="milk"
            state={state}
          />
          <ChoiceField
            form={form}
            name="standing"
            label="It"
            choices={STANDINGS}
            initial="declared"
            state={state}
          />
          <Button>Add</Button>
        </div>
      )}
    </FormFrame>
  );
}

/** Puts some of a food into stock. */
export function NewLotForm({ foodId }: OfFood) {
  const form = 'new-lot';
  return (
    <FormFrame
      id={form}
      action={addLot}
      fields={['grams', 'place', 'useBy', 'openedOn']}
      hidden={{ foodId }}
    >
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4">
          <TextField
            form={form}
            name="grams"
            label="Bought, g"
            state={state}
            control={{ inputMode: 'decimal', autoComplete: 'off' }}
          />
          <TextField
            form={form}
            name="place"
            label="Place"
            state={state}
            control={{ placeholder: 'jar by the window' }}
          />
          <TextField
            form={form}
            name="useBy"
            label="Use by"
            state={state}
            control={{ type: 'date' }}
          />
          <TextField
            form={form}
            name="openedOn"
            label="Opened on"
            state={state}
            control={{ type: 'date' }}
          />
          <div className="col-span-2">
            <Button>Put into stock</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
