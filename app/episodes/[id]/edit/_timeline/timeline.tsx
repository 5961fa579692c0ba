import type { CutPoints } from '#lib/cut/cut-points';
import { printTimecode } from '#lib/cut/timecode';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { ChaptersPart } from './chapters-part';
import { FilesPart } from './files-part';
import { FrameRatePart } from './frame-rate-part';
import { FromCaptions } from './from-captions';
import { ListForm } from './list-form';
import { PlannedAndCut } from './planned-and-cut';
import { PointsForm } from './points-form';
import type { TimelineView } from './read-timeline';
import { SpeakingRate } from './speaking-rate';

interface Props {
  readonly timeline: TimelineView;
  /** The captions that the address asks for. */
  readonly captions: string | null;
}

/** The running order in the cut: lengths, in- and out-points and where they come from, chapters, files. */
export function Timeline({ timeline, captions }: Props) {
  const { file, points, rate } = timeline;
  if (points.length === 0) {
    return (
      <EmptyState
        title="No segments yet"
        action={<ButtonLink href={`/episodes/${file.episode.id}`}>To the running order</ButtonLink>}
      >
        Once the running order has segments, this page says how long each will be and is in the cut,
        where it begins and ends, and what chapters that makes.
      </EmptyState>
    );
  }
  return (
    <>
      <PlannedAndCut timeline={timeline} />
      <SpeakingRate timeline={timeline} />
      <section aria-labelledby="in-and-out" className="mt-12 print:hidden">
        <h2 id="in-and-out">Where segments begin and end</h2>
        {rate && (
          <p className="mt-1 max-w-[75ch] text-soft">
            Timecode at {rate.words} frames a second, from {printTimecode(0, rate)} at the first
            picture. In a field, up and down move it by a frame, Page Up and Page Down by a second;
            a cut that two segments share moves for both. “Ends before” is the first frame after the
            segment.
          </p>
        )}
        <FrameRatePart timeline={timeline} />
        {rate && (
          <div className="mt-3">
            <PointsForm
              key={rate.id}
              episodeId={file.episode.id}
              rateId={rate.id}
              points={points}
            />
          </div>
        )}
      </section>
      {rate && (
        <>
          <FromCaptions timeline={timeline} rate={rate} asked={captions} />
          <section aria-labelledby="from-list" className="mt-12 print:hidden">
            <h2 id="from-list">Places from an edit list</h2>
            <p className="mt-1 mb-3 max-w-[70ch] text-soft">
              A segment stands where the clips do whose names share most words with its title.
              Nothing is taken before you press.
            </p>
            <ListForm
              key={rate.id}
              episodeId={file.episode.id}
              rateId={rate.id}
              placed={points.filter(isPlaced).map(({ id }) => id)}
            />
          </section>
        </>
      )}
      <ChaptersPart timeline={timeline} />
      <FilesPart timeline={timeline} />
    </>
  );
}

const isPlaced = ({ inFrame, outFrame }: CutPoints): boolean =>
  inFrame !== null || outFrame !== null;
