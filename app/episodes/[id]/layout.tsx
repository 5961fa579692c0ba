import type { ReactNode } from 'react';
import { EpisodeNav } from '../../_ui/page-nav';

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly children: ReactNode;
}

/** The pages of an episode stand above each of them. */
export default async function EpisodeLayout({ params, children }: Props) {
  const { id } = await params;
  return (
    <>
      <EpisodeNav id={id} />
      {children}
    </>
  );
}
