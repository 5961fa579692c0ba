import Link from 'next/link';
import { atHref, type EditPage } from './view';

/** Statements that cannot both hold, apart from what the breakdown says of each. */
export function Contradictions({ page }: { readonly page: EditPage }) {
  if (page.contradictions.length === 0) return null;
  return (
    <section aria-labelledby="contradictions" className="mt-10">
      <h2 id="contradictions">They contradict each other</h2>
      <p className="mt-1 max-w-[70ch] text-soft">
        Whatever the breakdown says, these can’t hold together.
      </p>
      <ul className="mt-3 max-w-4xl">
        {page.contradictions.map(({ id, words, places }) => (
          <li key={id} className="border-b border-line py-2.5">
            <p className="font-semibold">{words}</p>
            <ul className="mt-1">
              {places.map((place) => (
                <li key={place.id} className="flex gap-4 py-0.5">
                  <Link
                    className="link inline-flex min-h-6 min-w-16 shrink-0 items-center"
                    href={atHref(page.episodeId, place.id)}
                  >
                    {place.words}
                  </Link>
                  <span>“{place.said}”</span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </section>
  );
}
