'use client';

import { Failure } from '../../_ui/failure';

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

/** The navigation of the episode stays, so that its other pages can be reached. */
export default function EpisodeError({ error, reset }: Props) {
  return <Failure error={error} retry={reset} what="This part of the episode could not be shown" />;
}
