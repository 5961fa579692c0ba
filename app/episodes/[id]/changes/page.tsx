import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { takeBack } from '../actions';
import { ChangesView } from './_components/changes-view';
import { listed, toldAct } from './told';

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly before?: string | string[] }>;
}

export const metadata: Metadata = { title: 'What changed' };

export default async function ChangesPage({ params, searchParams }: Props) {
  const { id } = await params;
  const { before } = await searchParams;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  const from = typeof before === 'string' && /^\d{1,9}$/.test(before) ? Number(before) : null;
  const { acts, next, names } = await readEpisodeChanges(id, from === null ? {} : { before: from });
  const told = { region: file.episode.region, zone: file.kitchen.zone };
  return (
    <ChangesView
      here={`/episodes/${id}/changes`}
      of={file.episode.title}
      takeBack={takeBack}
      values={{ episodeId: id }}
      acts={listed(acts.map((act) => toldAct(act, names, told)))}
      next={next}
      first={from === null}
    />
  );
}
