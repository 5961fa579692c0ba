import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';

/** Shown where an address asks for a filming day that is none of the episode's. */
export function NotThisDay({ episodeId }: { readonly episodeId: string }) {
  return (
    <EmptyState
      title="This is no filming day of this episode"
      action={<ButtonLink href={`/episodes/${episodeId}/day`}>To its filming day</ButtonLink>}
    >
      The day was taken out, or the episode is not filmed on it any more.
    </EmptyState>
  );
}
