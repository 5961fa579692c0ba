import Link from 'next/link';
import { dishesOf } from '#lib/episode/context';
import { scopeNumbers } from '#lib/publish/cards/card-number';
import type { NumbersToPublish } from '#lib/publish/from-lock';

interface Props {
  readonly episodeId: string;
  readonly source: NumbersToPublish;
}

/** Dishes whose cards can't show every number, with the reason and the way to it. */
export function OpenCards({ episodeId, source }: Props) {
  const open = dishesOf(source.file.episode.segments).flatMap(({ id, title }) => {
    const { notes } = scopeNumbers(source, { kind: 'whole', segmentId: id });
    return notes.length === 0 ? [] : [{ id, title, why: notes.join('; ') }];
  });
  if (open.length === 0) return null;
  return (
    <section aria-labelledby="open-cards" className="mb-6">
      <h2 id="open-cards">Not whole yet</h2>
      <ul className="mt-1">
        {open.map(({ id, title, why }) => (
          <li key={id} className="hatch border-b border-line py-2">
            <b className="font-semibold">{title}</b>: {why}.{' '}
            <Link className="link" href={`/episodes/${episodeId}#row-${id}`}>
              To its ingredients
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
