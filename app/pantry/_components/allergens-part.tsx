import { ButtonForm } from '../../_forms/button-form';
import { ALLERGEN_WORDS } from '#lib/publish/allergen-list';
import type { StoredFood } from '#lib/store/read-foods';
import { removeAllergen } from '../actions';
import { AllergenForm } from './food-parts';
import { FoodSection } from './food-section';

const STANDING_WORDS = {
  declared: 'contains it, says the label',
  mayContain: 'may contain it, says the label',
  proposed: 'proposed by a rule, not published before you confirm it',
  confirmed: 'contains it, you said',
  denied: 'not in it, you said',
} as const;

/** What a label declares, a rule proposes and the person says of allergens. */
export function AllergensPart({ stored }: { readonly stored: StoredFood }) {
  const { food, revs, own } = stored;
  return (
    <FoodSection id="allergens" title="Allergens">
      <ul className="mb-3">
        {food.allergens.map(({ id, allergen, standing, reason }) => (
          <li
            key={id}
            className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-1"
          >
            <span>
              <b className="font-semibold">{ALLERGEN_WORDS[allergen]}</b>:{' '}
              {STANDING_WORDS[standing]}
              {standing === 'proposed' && <span className="text-soft"> ({reason})</span>}
            </span>
            {(own || standing !== 'proposed') && (
              <ButtonForm
                action={removeAllergen}
                values={{ foodId: food.id, partId: id, rev: revs[id] ?? 0 }}
                label={`Take out ${ALLERGEN_WORDS[allergen]}`}
              >
                Take out
              </ButtonForm>
            )}
          </li>
        ))}
        {food.allergens.length === 0 && <li className="text-soft">None is known.</li>}
      </ul>
      <details className="print:hidden">
        <summary className="link min-h-11 content-center">Add an allergen</summary>
        <div className="pt-1 pb-3">
          <AllergenForm foodId={food.id} />
        </div>
      </details>
    </FoodSection>
  );
}
