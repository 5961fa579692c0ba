import { EmptyState } from '../../../_ui/empty-state';
import type { LockStanding } from '#lib/lock/lock-standing';
import { STAGE_WORDS, type Stage } from '#lib/overview/stage';
import { printDay } from '#lib/units/print-date';
import { AddSegment } from './add-segment';
import { AgainNotes } from './again-part';
import { DayTotal } from './day-total';
import { EpisodeHead } from './episode-head';
import { LastChange, type LastAct } from './last-change';
import { SegmentSection } from './segment-section';
import type { EpisodeView as View } from './view';

interface Props {
  readonly view: View;
  readonly stage: Stage;
  readonly numbers: LockStanding;
  /** The whole length of the cut, in seconds. */
  readonly totalS: number;
  /** What was done last, to be undone; null where nothing was. */
  readonly last: LastAct | null;
}

/** The episode: its slate, its running order, and each segment with what is said and what it holds. */
export function EpisodeView({ view, stage, numbers, totalS, last }: Props) {
  const { episode, day } = view.file;
  const empty = episode.segments.length === 0;
  return (
    <>
      <EpisodeHead
        view={view}
        stage={STAGE_WORDS[stage]}
        filming={day && printDay(day.date)}
        publishing={episode.publishOn && printDay(episode.publishOn)}
        numbers={numbers}
        totalS={totalS}
      />
      {view.again && <AgainNotes again={view.again} of={episode.id} />}
      {empty && (
        <EmptyState title="Nothing in the running order yet">
          Begin with one dish: its ingredients with their grams give the first numbers.
        </EmptyState>
      )}
      {episode.segments.map((segment) => (
        <SegmentSection key={segment.id} view={view} segment={segment} />
      ))}
      {view.figures.dishes.some((dish) => dish.lines.length > 0) && <DayTotal view={view} />}
      <AddSegment episodeId={episode.id} open={empty} again={view.again} />
      <LastChange episodeId={episode.id} last={last} formOpen={view.editing !== null} />
    </>
  );
}
