import type { Metadata } from 'next';
import { readCorrections, readEpisodeTitles } from '#lib/store/read-corrections';
import { toldCorrections } from '../episodes/[id]/corrections/told-correction';
import { AllCorrections } from './_components/all-corrections';

export const metadata: Metadata = { title: 'Corrections' };

/** Each is read with its two locks. */
const ON_A_PAGE = 10;

interface Props {
  readonly searchParams: Promise<{ readonly after?: string | string[] }>;
}

export default async function AllCorrectionsPage({ searchParams }: Props) {
  const { after } = await searchParams;
  const page = await readCorrections({
    take: ON_A_PAGE,
    after: typeof after === 'string' ? after : undefined,
  });
  const titles = await readEpisodeTitles(page.rows.map(({ episodeId }) => episodeId));
  const rows = (await toldCorrections(page.rows)).map(({ id, episodeId, told }) => ({
    ...{ id, episodeId, told },
    title: titles.get(episodeId) ?? null,
  }));
  return <AllCorrections rows={rows} next={page.next} first={after === undefined} />;
}
