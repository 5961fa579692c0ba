import Link from 'next/link';
import { ButtonForm } from '../../_forms/button-form';
import { Button } from '../../_ui/button';
import { CONTROL } from '../../_ui/form/field';
import type { Food } from '#lib/foods/food';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { secondWitness } from '#lib/foods/second-witness';
import { STATE_WORDS } from '#lib/foods/state-words';
import { nameWitness } from '../witness-actions';

interface Props {
  readonly food: Food;
  readonly rev: number;
  /** The reference food that is named; null where none is, or it is gone. */
  readonly witness: Food | null;
  readonly query: string;
  /** Reference foods that fit the words; null where nothing was asked. */
  readonly found: readonly Food[] | null;
}

/** The reference food nearest to a label, what of the label it contradicts, and the choice of another. */
export function SecondWitnessPart({ food, rev, witness, query, found }: Props) {
  return (
    <section aria-labelledby="witness" className="mt-8">
      <h2 id="witness">Second witness</h2>
      {witness ? (
        <>
          <p className="mt-1">
            Held against{' '}
            <Link className="link" href={`/pantry/foods/${witness.id}`}>
              {witness.name}
            </Link>
            , per 100 g.
          </p>
          <Remarks food={food} witness={witness} />
          <ButtonForm action={nameWitness} values={{ foodId: food.id, rev, witnessId: '' }}>
            Hold it against none
          </ButtonForm>
        </>
      ) : (
        <p className="mt-1 text-soft">
          A food of the table that is nearest to this label shows where the label was misread.
        </p>
      )}
      <form method="get" action="#witness" className="mt-3 flex gap-2 print:hidden">
        <label htmlFor="witness-field" className="unseen">
          Look for a food of the table
        </label>
        <input
          id="witness-field"
          name="witness"
          type="search"
          defaultValue={query}
          placeholder="yogurt plain, cheddar"
          className={CONTROL}
        />
        <span className="shrink-0">
          <Button>Look up</Button>
        </span>
      </form>
      {found && (
        <ul className="mt-2 print:hidden" aria-label={`Foods of the table for ${query}`}>
          {found.map((hit) => (
            <li
              key={hit.id}
              className="flex flex-wrap items-center justify-between gap-x-4 border-b border-line py-1"
            >
              <span>
                {hit.name}{' '}
                <span className="text-fine text-soft">{STATE_WORDS[hit.version.state]}</span>
              </span>
              <ButtonForm
                action={nameWitness}
                values={{ foodId: food.id, rev, witnessId: hit.id }}
                label={`Hold it against ${hit.name}`}
              >
                Hold it against this
              </ButtonForm>
            </li>
          ))}
          {found.length === 0 && (
            <li className="text-soft">Nothing of the table fits “{query}”. Try fewer words.</li>
          )}
        </ul>
      )}
    </section>
  );
}

function Remarks({ food, witness }: { readonly food: Food; readonly witness: Food }) {
  const result = secondWitness(food, witness);
  if (!result.compared) return <p className="text-soft">Not compared: {result.why}.</p>;
  const far = result.disagreements.filter((each) => each.far);
  const near = result.disagreements.filter((each) => !each.far);
  return (
    <>
      {far.length > 0 && (
        <>
          <p className="mt-2 font-semibold">They disagree. Read the label again:</p>
          <ul className="ml-5 list-disc">
            {far.map(({ nutrient, words }) => (
              <li key={nutrient}>{words}</li>
            ))}
          </ul>
        </>
      )}
      {near.length > 0 && (
        <p className="mt-1 text-fine text-soft">
          A little apart, as two packs may be:{' '}
          {near.map(({ nutrient }) => NUTRIENTS[nutrient].label).join(', ')}.
        </p>
      )}
      {result.disagreements.length === 0 && <p className="mt-1">They agree.</p>}
    </>
  );
}
