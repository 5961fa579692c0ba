import Link from 'next/link';
import type { SweepPlace, SweepRow } from '#lib/publish/correction/sweep';
import { replyHref } from '../../publish/replies/reply-href';

interface Props {
  readonly rows: readonly SweepRow[];
  readonly episodeId: string;
}

/** What went out with older numbers, and what of it is known to be put right. */
export function SweepPart({ rows, episodeId }: Props) {
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="sweep">
      <h2 id="sweep">What else went out</h2>
      <ul className="mt-2">
        {rows.map(({ key, what, words, done, place }) => (
          <li key={key} className="border-b border-line py-2">
            <Link
              className="link inline-flex min-h-8 items-center font-semibold wrap-anywhere"
              href={placeHref(episodeId, place)}
            >
              {what}
            </Link>
            <span
              className={`block text-fine ${done === false ? 'font-semibold text-hand' : 'text-soft'}`}
            >
              {words}
            </span>
          </li>
        ))}
      </ul>
      <p className="mt-2 print:hidden">
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/episodes/${episodeId}/publish`}
        >
          The corrected description
        </Link>
      </p>
    </section>
  );
}

/** Where it is made, so that it can be copied, drawn or written again. */
function placeHref(episodeId: string, place: SweepPlace): string {
  const here = `/episodes/${episodeId}`;
  switch (place.kind) {
    case 'cards':
      return `${here}/cards`;
    case 'reply':
      return replyHref(episodeId, { replyId: place.id });
    case 'piece':
      return `${here}/publish#piece-${place.id}`;
    case 'description':
      return `${here}/publish?form=${place.form}#description`;
  }
}
