import Link from 'next/link';
import { Button } from '../../_ui/button';
import { CONTROL } from '../../_ui/form/field';
import type { Food } from '#lib/foods/food';

interface Props {
  readonly query: string;
  /** What was found; null where nothing was asked. */
  readonly found: readonly Food[] | null;
}

/** Looks a food up among the reference foods and the own ones. Works as a plain form. */
export function LookUp({ query, found }: Props) {
  return (
    <section aria-labelledby="look-up">
      <h2 id="look-up">Look a food up</h2>
      <form action="/pantry" method="get" role="search" className="mt-2 flex max-w-2xl gap-2">
        <label htmlFor="look-up-field" className="unseen">
          Food
        </label>
        <input
          id="look-up-field"
          name="q"
          type="search"
          defaultValue={query}
          placeholder="barley cooked, skyr, zucchini"
          className={CONTROL}
        />
        <span className="shrink-0">
          <Button>Look up</Button>
        </span>
      </form>
      {found && (
        <ul className="mt-3" aria-label={`Foods for ${query}`}>
          {found.map(({ id, name, version }) => (
            <li key={id} className="border-b border-line py-1">
              <Link className="link inline-flex min-h-8 items-center" href={`/pantry/foods/${id}`}>
                {name}
              </Link>{' '}
              <span className="text-fine text-soft">
                {[version.source, version.release, version.sourceNo].filter(Boolean).join(' ')}
              </span>
            </li>
          ))}
          {found.length === 0 && (
            <li className="text-soft">
              Nothing fits “{query}”. Try fewer words, or add it from its label.
            </li>
          )}
        </ul>
      )}
    </section>
  );
}
