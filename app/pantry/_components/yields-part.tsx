import { ButtonForm } from '../../_forms/button-form';
import { Disclosure } from '../../_ui/disclosure';
import { cookMethods, yieldPercent, yieldUsedWords } from '#lib/episode/yield-words';
import type { StoredFood } from '#lib/store/read-foods';
import { scaleGramsText } from '#lib/units/scale-grams';
import { removeYield } from '../yield-actions';
import { YieldForm } from './yield-form';

/** A food's cooked weights, the person's own and published ones, each with who says so and what is used of them. */
export function YieldsPart({ stored }: { readonly stored: StoredFood }) {
  const { food, revs, yieldFacts } = stored;
  const used = yieldUsedWords(food);
  return (
    <section aria-labelledby="yields" className="mt-8">
      <h2 id="yields">Cooked weight</h2>
      <p className="mt-1 text-soft">
        {used
          ? `An ingredient of it is turned from raw to cooked, and back, by ${used}.`
          : 'None is known: an ingredient weighed in another state than the food is listed in stays open.'}
      </p>
      <ul className="mt-2">
        {food.yields.map((observed) => {
          const { id, method, rawMg, cookedMg, source } = observed;
          const facts = yieldFacts[id];
          return (
            <li
              key={id}
              className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-line py-1"
            >
              <span>
                {method}: {scaleGramsText(cookedMg)} g from {scaleGramsText(rawMg)} g raw,{' '}
                {yieldPercent(observed)}{' '}
                <span className="text-fine text-soft">
                  {source}
                  {observed.own && facts && `, ${facts.on}`}
                </span>
              </span>
              {facts?.mine && (
                <ButtonForm
                  action={removeYield}
                  values={{ foodId: food.id, partId: id, rev: revs[id] ?? 0 }}
                  label={`Take out the cooked weight ${method}, ${yieldPercent(observed)}`}
                >
                  Take out
                </ButtonForm>
              )}
            </li>
          );
        })}
      </ul>
      <Disclosure words="Add your own raw and cooked weight">
        <YieldForm foodId={food.id} methods={cookMethods(food)} />
      </Disclosure>
    </section>
  );
}
