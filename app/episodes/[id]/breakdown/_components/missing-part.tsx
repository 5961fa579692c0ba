import Link from 'next/link';
import type { EpisodeFile } from '#lib/episode/schema';
import type { MissingPart as Missing } from '#lib/figures/figure';
import { missingText } from '#lib/figures/print-figure';
import { editHref, rowHref } from '../../_components/view';

interface Props {
  readonly file: EpisodeFile;
  readonly missing: readonly Missing[];
}

/** What the number lacks and why, each with the way to where it is filled in. */
export function MissingPart({ file, missing }: Props) {
  if (missing.length === 0) return null;
  return (
    <ul className="mt-2" aria-label="What is missing">
      {missing.map((part) => (
        <li key={`${part.lineId} ${part.reason}`} className="hatch border-b border-line py-1.5">
          {missingText([part])}.{' '}
          <Link
            className="link inline-flex min-h-6 items-center print:hidden"
            href={mendHref(file, part)}
          >
            Fill it in<span className="unseen">: {part.text}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** An ingredient's own form, or the dish where all of it is meant. */
function mendHref({ episode }: EpisodeFile, { lineId }: Missing): string {
  const dish = episode.segments.find(
    ({ recipe }) => recipe?.id === lineId || recipe?.lines.some(({ id }) => id === lineId),
  );
  if (!dish) return `/episodes/${episode.id}`;
  return dish.recipe?.id === lineId ? rowHref(episode.id, dish.id) : editHref(episode.id, lineId);
}
