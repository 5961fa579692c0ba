'use client';

import Link from 'next/link';
import { useSearchParams } from 'next/navigation';

/** The way to what the texts propose; right after an episode was made of them, it says how many lines became nothing. */
export function DraftLink({ episodeId }: { readonly episodeId: string }) {
  const left = useSearchParams().get('left') ?? '';
  const count = /^\d{1,6}$/.test(left) ? Number(left) : 0;
  return (
    <p className="my-2">
      <Link
        href={`/episodes/${episodeId}/edit/draft`}
        className="link inline-flex min-h-11 items-center"
      >
        Draft from these texts
      </Link>
      {count > 0 && (
        <span className="ml-2">
          {count === 1 ? 'One line' : `${count} lines`} became no part of the episode: it says
          which.
        </span>
      )}
    </p>
  );
}
