import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { firstRate } from '#lib/cut/reading-pace';
import { readingScript } from '#lib/overview/reading-script';
import { numbersToPublish } from '#lib/publish/from-lock';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { EmptyState } from '../../../_ui/empty-state';
import { SlateHead } from '../../../_ui/slate-head';
import { ButtonLink } from '../../../_ui/button';
import { Gaps } from './_components/gaps';
import { ReadingView } from './_components/reading-view';
import { RemoteView } from './_components/remote-view';

export const metadata: Metadata = { title: 'Read to camera' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly remote?: string | string[] }>;
}

const STANDING = { draft: 'draft', locked: 'locked', broken: 'lock broken' } as const;

/** What is said to the camera, large; with `?remote` what moves it from another device. */
export default async function ReadingPage({ params, searchParams }: Props) {
  const { id } = await params;
  const isRemote = (await searchParams).remote !== undefined;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  const lock = await readLastLock(id);
  const said = numbersToPublish(file, lock?.snapshot ?? null);
  const { items, gaps } = readingScript(said);
  const points = items.filter(({ kind }) => kind === 'point');
  const perMinute = firstRate(file.creator.wordsPerMinute);
  return (
    <>
      <SlateHead
        kind={isRemote ? 'Read to camera, remote' : 'Read to camera'}
        title={file.episode.title}
        shut={said.standing === 'locked'}
        cells={[
          { name: 'Sentences', value: points.length },
          { name: 'Numbers', value: STANDING[said.standing] },
        ]}
      />
      {points.length === 0 ? (
        <EmptyState
          title="Nothing to say yet"
          action={
            <ButtonLink href={`/episodes/${id}`} tone="go">
              To the running order
            </ButtonLink>
          }
        >
          Sentences to say are written at each segment of the running order; their numbers are
          filled in from the ingredients.
        </EmptyState>
      ) : isRemote ? (
        <RemoteView episodeId={id} items={items} perMinute={perMinute} />
      ) : (
        <>
          <ReadingView episodeId={id} items={items} perMinute={perMinute} />
          <Gaps episodeId={id} gaps={gaps} />
        </>
      )}
    </>
  );
}
