import Link from 'next/link';
import { sourceWords } from '#lib/figures/breakdown-words';
import type { Food } from '#lib/foods/food';

interface Props {
  readonly query: string;
  readonly found: readonly Food[];
}

/** Foods of the published tables, and own ones, that fit the words. */
export function FoundFoods({ query, found }: Props) {
  return (
    <ul className="mt-2" aria-label={`Foods for ${query}`}>
      {found.map(({ id, name, version }) => (
        <li key={id} className="border-b border-line">
          <Link className="link inline-flex min-h-11 items-center" href={`/pantry/foods/${id}`}>
            {name}
          </Link>{' '}
          <span className="text-fine text-soft">{sourceWords(version)}</span>
        </li>
      ))}
      {found.length === 0 && (
        <li className="text-soft">
          Nothing fits “{query}”. Try fewer words, or add it from its label.
        </li>
      )}
    </ul>
  );
}
