import 'server-only';
import { takeMarks, type Synchronised, type Take, type TakeMark } from '#lib/cut/take-marks';
import { rateOf } from '#lib/cut/timecode';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { stepsAfter, type StepAfter } from '#lib/shoot/after-steps';
import { loggedTakes } from '#lib/shoot/after-takes';
import { cameraClockOf, type CameraClock } from '#lib/shoot/camera-clock';
import { dayFacts } from '#lib/shoot/day-facts';
import type { DayEvent } from '#lib/shoot/day-log';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';

/** A filming day as it went. */
export interface DayAfter {
  readonly file: EpisodeFile;
  readonly day: FilmingDay;
  readonly events: readonly DayEvent[];
  readonly steps: readonly StepAfter[];
  readonly takes: readonly Take[];
  /** The picture of the clock; null where none was entered. */
  readonly seen: Synchronised | null;
  /** The takes with their frames; null where no picture of the clock is known. */
  readonly marks: readonly TakeMark[] | null;
}

/** An episode's filming day as its log tells it: the one asked for, else the one that is next; null where there is none. */
export async function readAfter(episodeId: string, dayId?: string): Promise<DayAfter | null> {
  const file = await readEpisodeFile(episodeId, new Date().toISOString(), { dayId });
  if (!file?.day) return null;
  const { events } = await readDayEvents(file.day.id);
  const takes = loggedTakes(file, events);
  const seen = synchronised(cameraClockOf(events));
  return {
    file,
    day: file.day,
    events,
    steps: stepsAfter(dayFacts(file), events),
    takes,
    seen,
    marks: seen && takeMarks(takes, seen),
  };
}

function synchronised(clock: CameraClock | null): Synchronised | null {
  const rate = clock && rateOf(clock.rate, clock.rate.dropFrame);
  return rate && { clockAt: clock.clockAt, frame: clock.frame, rate };
}
