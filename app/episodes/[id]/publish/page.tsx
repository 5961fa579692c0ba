import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { episodeFigures } from '#lib/figures/episode-figures';
import { confirmedOnly, publishedNumbers } from '#lib/figures/published-numbers';
import { lockDifference } from '#lib/lock/lock-difference';
import { whyBroken } from '#lib/lock/lock-standing';
import { inputsHash } from '#lib/lock/numbers-lock';
import { saidStandings } from '#lib/overview/said-standing';
import { description } from '#lib/publish/description';
import { numbersToPublish } from '#lib/publish/from-lock';
import { structuredData } from '#lib/publish/structured/structured-data';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readLocks } from '#lib/store/read-locks';
import { localMoment } from '#lib/units/local-date';
import { PublishView } from './_components/publish-view';

export const metadata: Metadata = { title: 'Publish' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function PublishPage({ params }: Props) {
  const { id } = await params;
  const file = await readEpisodeFile(id, new Date().toISOString());
  if (!file) notFound();
  const locks = await readLocks(id);
  const [newest] = locks;
  const figures = episodeFigures(file);
  const moment = (at: Date) => localMoment(at, file.kitchen.zone);
  const copied = locks.flatMap(({ published }) =>
    published.map(({ id: textId, at, text }) => ({ id: textId, at: moment(at), text })),
  );
  const lock = newest && {
    at: moment(newest.at),
    seq: newest.seq,
    sha256: newest.sha256,
    difference: lockDifference(newest.snapshot, file, figures),
    broken: whyBroken(newest.snapshot, file, figures),
  };
  return (
    <PublishView
      page={{
        file,
        description: description(file, figures),
        figures,
        numbers: confirmedOnly(publishedNumbers(file, figures)),
        revs: await readRevisions(id),
        lock: lock ?? null,
        inputsSha256: inputsHash(file),
        said: saidStandings(file, figures),
        structured: structuredData(numbersToPublish(file, newest?.snapshot ?? null, figures)),
        copied,
      }}
    />
  );
}
