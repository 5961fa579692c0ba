import Link from 'next/link';

/** The way to what the texts propose beyond what the episode has. */
export function DraftLink({ episodeId }: { readonly episodeId: string }) {
  return (
    <p className="my-2">
      <Link
        href={`/episodes/${episodeId}/edit/draft`}
        className="link inline-flex min-h-11 items-center"
      >
        Draft from these texts
      </Link>
    </p>
  );
}
