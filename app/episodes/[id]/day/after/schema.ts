import { z } from 'zod';
import { FRAME_RATE_IDS, frameRate, readTimecode } from '#lib/cut/timecode';
import { readClockSecond } from '#lib/shoot/camera-clock';
import { rowId } from '../../../../_forms/fields';

const ofDay = { episodeId: rowId, dayId: rowId };

/** What was offered when the button was drawn: nothing else is taken. */
const offered = z.string().min(1, 'Something is missing: open the page again.').max(60_000);

export const takeOneForm = z.object({ ...ofDay, stepId: rowId, offered });
export const takeAllForm = z.object({ ...ofDay, offered });

/** The picture of the clock: its clock in seconds after midnight, its frame, and the rate that numbers it. */
export const cameraClockForm = z
  .object({
    ...ofDay,
    clock: z.string().trim().max(40, 'This is too long for a clock time.').default(''),
    timecode: z.string().trim().max(40, 'This is too long for a timecode.').default(''),
    rate: z.enum(FRAME_RATE_IDS, { error: 'Choose how many frames a second the camera takes.' }),
  })
  .transform(({ episodeId, dayId, clock, timecode, rate: rateId }, context) => {
    const fault = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const rate = frameRate(rateId);
    const second = readClockSecond(clock);
    if (second === null) {
      fault('clock', 'Write what the clock shows with its seconds, as 14:03:27.');
    }
    const frame = readTimecode(timecode, rate);
    if (!frame.ok) fault('timecode', frame.problems.map(({ message }) => message).join(' '));
    return { episodeId, dayId, second: second ?? 0, frame: frame.ok ? frame.value : 0, rate };
  });
