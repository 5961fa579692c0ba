import { cutRemarks, type CutPoints } from '#lib/cut/cut-points';
import { printTimecode, readTimecode, type FrameRate } from '#lib/cut/timecode';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { pointFields } from './field-names';

/** What was typed for each segment, as points; faults are named by their fields. */
export function pointsSent(
  points: readonly CutPoints[],
  sent: Readonly<Record<string, unknown>>,
  rate: FrameRate,
): Result<readonly CutPoints[]> {
  const problems: Problem[] = [];
  const read = (name: string, frame: number | null): number | null => {
    const typed = sent[name];
    // A segment that came since is left as it is.
    if (typeof typed !== 'string') return frame;
    const text = typed.trim();
    if (text === '') return null;
    // What was not touched stays, whatever its number says.
    if (frame !== null && text === printTimecode(frame, rate)) return frame;
    const found = readTimecode(text, rate);
    if (found.ok) return found.value;
    problems.push(...found.problems.map((problem) => ({ ...problem, path: name })));
    return frame;
  };
  const now = points.map((one) => ({
    ...one,
    inFrame: read(pointFields(one.id).inFrame, one.inFrame),
    outFrame: read(pointFields(one.id).outFrame, one.outFrame),
  }));
  // Gaps, overlaps and what has no end yet may stand; a length below one frame may not.
  for (const { id, code, message } of cutRemarks(now, rate)) {
    if (code === 'length') problems.push({ path: pointFields(id).outFrame, code, message });
  }
  return problems.length > 0 ? failed(...problems) : ok(now);
}
