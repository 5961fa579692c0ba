import Link from 'next/link';
import { Button } from '../../../../../_ui/button';
import { CONTROL } from '../../../../../_ui/form/field';
import { sourceWords } from '#lib/figures/breakdown-words';
import type { Food } from '#lib/foods/food';

interface Props {
  readonly foodId: string;
  readonly name: string;
  readonly words: string;
  readonly found: readonly Food[];
  /** Why the food that was chosen cannot be it; null where none was. */
  readonly problem: string | null;
}

/** Chooses the food that another one is. Works as a plain form. */
export function ChooseFood({ foodId, name, words, found, problem }: Props) {
  return (
    <section aria-labelledby="other" className="max-w-2xl">
      <h2 id="other">Which food is it?</h2>
      <p className="mt-1 text-soft">
        Choose the one that stays. Every ingredient, pack and jar of {name} is then of that one. You
        see first what changes, and one press brings all of it back.
      </p>
      {problem && (
        <p role="alert" className="mt-3 border-l-[6px] border-hand pl-3 font-semibold">
          {problem}
        </p>
      )}
      <form method="get" role="search" className="mt-3 flex gap-2">
        <label htmlFor="other-field" className="unseen">
          The food that stays
        </label>
        <input
          id="other-field"
          name="q"
          type="search"
          defaultValue={words}
          maxLength={200}
          className={CONTROL}
        />
        <span className="shrink-0">
          <Button>Look up</Button>
        </span>
      </form>
      <ul className="mt-3" aria-label={`Foods for ${words}`}>
        {found.map((food) => (
          <li key={food.id} className="border-b border-line">
            <Link
              className="link flex min-h-11 flex-wrap items-center gap-x-2 py-1"
              href={`/pantry/foods/${foodId}/merge?into=${encodeURIComponent(food.id)}`}
            >
              {food.name} <span className="text-fine text-soft">{sourceWords(food.version)}</span>
            </Link>
          </li>
        ))}
        {found.length === 0 && (
          <li className="text-soft">Nothing else fits “{words}”. Try fewer words.</li>
        )}
      </ul>
    </section>
  );
}
