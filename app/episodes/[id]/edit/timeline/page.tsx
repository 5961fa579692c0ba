import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { lengthWords } from '#lib/cut/length-words';
import { SlateHead } from '../../../../_ui/slate-head';
import { LastChange } from '../../_components/last-change';
import { lastAct } from '../../last-act';
import { readTimeline } from '../_timeline/read-timeline';
import { Timeline } from '../_timeline/timeline';

export const metadata: Metadata = { title: 'Running order in the cut' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly captions?: string | string[] }>;
}

export default async function TimelinePage({ params, searchParams }: Props) {
  const { id } = await params;
  const { captions } = await searchParams;
  const timeline = await readTimeline(id);
  if (!timeline) notFound();
  const { file, rate, runtime } = timeline;
  return (
    <>
      <SlateHead
        kind="Running order in the cut"
        title={file.episode.title}
        cells={[
          { name: 'Planned', value: lengthWords(runtime.plannedS) },
          { name: 'Cut', value: lengthWords(runtime.cutS) },
          { name: 'Frames a second', value: rate?.words ?? '–' },
        ]}
      />
      <Timeline timeline={timeline} captions={typeof captions === 'string' ? captions : null} />
      <LastChange episodeId={id} last={await lastAct(file)} formOpen />
    </>
  );
}
