import Link from 'next/link';
import { ButtonForm } from '../../_forms/button-form';
import type { FoodVersion } from '#lib/foods/food';
import type { StoredFood } from '#lib/store/read-foods';
import { removeFood } from '../actions';
import { FoodForm } from './food-parts';
import { FoodSection } from './food-section';
import { RefuseForm } from './refuse-form';

/** What can be changed of an own food beside its label: what comes off, its name, and that it is another food. */
export function OwnFoodParts({ stored }: { readonly stored: StoredFood }) {
  const { food, revs } = stored;
  const rev = revs[food.id] ?? 0;
  return (
    <>
      <FoodSection id="peel-and-trim" title="Peel and trim">
        <details className="print:hidden">
          <summary className="link min-h-11 content-center">
            What comes off before it counts
          </summary>
          <div className="pt-1 pb-3">
            <RefuseForm
              key={food.version.id}
              foodId={food.id}
              versionId={food.version.id}
              refuse={refuseTexts(food.version)}
            />
          </div>
        </details>
      </FoodSection>
      <FoodSection id="name" title="Name and place">
        <details className="print:hidden">
          <summary className="link min-h-11 content-center">Change the name or the place</summary>
          <div className="pt-1 pb-3">
            <FoodForm foodId={food.id} rev={rev} name={food.name} section={food.section} />
          </div>
        </details>
        <p className="print:hidden">
          <Link
            className="link inline-flex min-h-11 items-center"
            href={`/pantry/foods/${food.id}/merge`}
          >
            The same food twice? Make it part of the other
          </Link>
        </p>
        <div className="mt-2">
          <ButtonForm
            action={removeFood}
            values={{ foodId: food.id, rev }}
            tone="hand"
            size="usual"
          >
            Take the food out of the pantry
          </ButtonForm>
        </div>
      </FoodSection>
    </>
  );
}

function refuseTexts({ refuse }: FoodVersion) {
  return {
    percent: refuse === null ? '' : String(refuse.percent),
    text: refuse?.text ?? '',
    inValues: refuse?.inValues ?? false,
  };
}
