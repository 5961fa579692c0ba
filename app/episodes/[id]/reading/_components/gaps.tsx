import Link from 'next/link';
import type { ScriptGap } from '#lib/overview/reading-script';
import { breakdownHref } from '../../breakdown/href';

interface Props {
  readonly episodeId: string;
  readonly gaps: readonly ScriptGap[];
}

/** Numbers that are not there when they are to be said, each with the way to its cause. */
export function Gaps({ episodeId, gaps }: Props) {
  if (gaps.length === 0) return null;
  return (
    <section aria-labelledby="gaps" className="mt-10 max-w-3xl print:hidden">
      <h2 id="gaps">Not there to be said</h2>
      <ul className="mt-2">
        {gaps.map(({ words, segmentId, of }, at) => (
          <li key={at} className="hatch border-b border-line px-2 py-2">
            {words}.{' '}
            <Link
              className="link"
              prefetch={false}
              href={
                of
                  ? breakdownHref(episodeId, of.scope, of.nutrient)
                  : `/episodes/${episodeId}#row-${segmentId}`
              }
            >
              {of ? 'To its breakdown' : 'To its segment'}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
