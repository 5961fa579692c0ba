import Link from 'next/link';
import type { SweepRow } from '#lib/publish/correction/sweep';

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
        {rows.map(({ key, what, words, done }) => (
          <li key={key} className="border-b border-line py-2">
            <b className="font-semibold">{what}</b>
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
