import { framesIn, printTimecode, type FrameRate } from '#lib/cut/timecode';
import { csvText } from '#lib/units/csv';

/** A take as an edit needs it. */
export interface Take {
  readonly slate: string;
  readonly take: number;
  readonly shot: string;
  readonly framing: string;
  readonly segment: string;
  readonly good: boolean;
  /** The instant at which it ended, as `toISOString` writes it. */
  readonly at: string;
  /** The same on the clock of the kitchen. */
  readonly clock: string;
  readonly note: string;
}

/** A frame of the camera's count in which a clock shows an instant. */
export interface Synchronised {
  readonly clockAt: string;
  readonly frame: number;
  readonly rate: FrameRate;
}

/** A take with the frame in which it ended, by the camera's count; it may lie before 0 or after the day. */
export interface TakeMark extends Take {
  readonly frame: number;
  readonly timecode: string;
}

/**
 * The takes with their frames: the camera counts on from the picture of the clock, at its exact rate. It must have
 * counted through, as it does with a time of day; nearest frame.
 * @example a take 2 s after a clock seen at frame 250, 25 a second: frame 300, 00:00:12:00
 */
export function takeMarks(takes: readonly Take[], seen: Synchronised): TakeMark[] {
  return takes.map((take) => {
    const since = Date.parse(take.at) - Date.parse(seen.clockAt);
    const frame = seen.frame + framesIn(since, seen.rate);
    return { ...take, frame, timecode: printTimecode(frame, seen.rate) };
  });
}

const HEAD = [
  'slate',
  'take',
  'good or again',
  'shot',
  'framing',
  'segment',
  'ended at (clock)',
  'ended at (timecode)',
  'frame',
  'note',
];

/** Takes as a table for other programs; timecode and frame are empty where no picture of the clock is known. */
export function takesCsv(takes: readonly (Take | TakeMark)[]): string {
  return csvText(
    HEAD,
    takes.map((take) => [
      take.slate,
      String(take.take),
      takeWord(take),
      take.shot,
      take.framing,
      take.segment,
      take.clock,
      'timecode' in take ? take.timecode : '',
      'frame' in take ? String(take.frame) : '',
      take.note,
    ]),
  );
}

/** What was thought of a take when it ended. */
export function takeWord({ good }: Pick<Take, 'good'>): string {
  return good ? 'good' : 'again';
}

/** A take's name in an edit: `2B take 3, good`. */
export function markName(take: Pick<Take, 'slate' | 'take' | 'good'>): string {
  return `${take.slate} take ${take.take}, ${takeWord(take)}`;
}
