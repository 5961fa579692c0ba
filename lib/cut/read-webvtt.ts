import { readTiming, readWebVttTime } from '#lib/cut/caption-times';
import {
  remarksOfTimes,
  type Aside,
  type CaptionRemark,
  type Captions,
  type Cue,
} from '#lib/cut/captions';
import { linesOf } from '#lib/cut/text-lines';

const SIGNATURE = /^WEBVTT(?:[ \t](.*))?$/;

/**
 * A WebVTT file by the parser rules of the W3C standard (6.1, "WebVTT file parsing"): what the standard drops is
 * dropped here too, and named by its line; notes, styles and regions are kept for writing. Times that the standard
 * does not let be written but that can be read (hours of one digit, a comma) are taken, with a remark.
 */
export function readWebVtt(text: string): Captions {
  // 6.1 step 3: NUL is the replacement character.
  const lines = linesOf(text.replaceAll('\0', '\uFFFD'));
  const remarks: CaptionRemark[] = [];
  const signature = SIGNATURE.exec(lines[0] ?? '');
  if (!signature) {
    const message = 'The first line is not “WEBVTT”: it is read as if it were.';
    remarks.push({ line: 1, code: 'signature', message, skipped: false });
  }
  const head = [signature?.[1] ?? ''];
  let at = signature ? 1 : 0;
  if (signature) {
    while (isWord(lines[at]) && !lines[at]?.includes('-->')) head.push(lines[(at += 1) - 1] ?? '');
  }
  const blocks: (Cue | Aside)[] = [];
  let cueSeen = false;
  while (at < lines.length) {
    if (!isWord(lines[at])) {
      at += 1;
      continue;
    }
    const { block, next, remark } = readBlock(lines, at, cueSeen);
    if (block) blocks.push(block);
    if (remark) remarks.push(remark);
    cueSeen ||= block?.kind === 'cue';
    at = next;
  }
  const cues = blocks.filter((block) => block.kind === 'cue');
  return { format: 'webvtt', head: head.join('\n'), blocks, remarks: inOrder(remarks, cues) };
}

interface ReadBlock {
  readonly block: Cue | Aside | null;
  readonly next: number;
  readonly remark: CaptionRemark | null;
}

const isWord = (line: string | undefined): boolean => line !== undefined && line !== '';

/** 6.1 "collect a WebVTT block": the times stand on its first or second line, a later arrow begins the next one. */
function readBlock(lines: readonly string[], at: number, cueSeen: boolean): ReadBlock {
  const named = !lines[at]?.includes('-->');
  const timesAt = named ? at + 1 : at;
  const timed = lines[timesAt]?.includes('-->') ?? false;
  let next = timed ? timesAt + 1 : at + 1;
  while (isWord(lines[next]) && !lines[next]?.includes('-->')) next += 1;
  // The line above an arrow is the name of that cue, where nothing else stands between.
  if (!timed) return aside(lines.slice(at, next), at, next, cueSeen);
  const name = named ? (lines[at] ?? '') : '';
  const line = timesAt + 1;
  const written = lines[timesAt] ?? '';
  const strict = readTiming(written, readWebVttTime);
  const times = strict ?? readTiming(written);
  if (times === null) {
    const message = `“${written.trim()}” should say from when to when, as in 00:01.000 --> 00:04.000: left out with its words.`;
    return { block: null, next, remark: { line, code: 'times', message, skipped: true } };
  }
  const text = lines.slice(timesAt + 1, next).join('\n');
  const endMs = Math.max(times.startMs, times.endMs);
  const cue: Cue = { kind: 'cue', name, ...times, endMs, text, line };
  const of = { line, skipped: false };
  if (endMs > times.endMs) {
    const message = 'It ends before it begins: it is taken to end where it begins.';
    return { block: cue, next, remark: { ...of, code: 'backwards', message } };
  }
  if (strict !== null) return { block: cue, next, remark: null };
  const message = 'Its times are not written as WebVTT asks (00:01:02.500), but can be read.';
  return { block: cue, next, remark: { ...of, code: 'times', message } };
}

function aside(block: readonly string[], at: number, next: number, cueSeen: boolean): ReadBlock {
  const [first = ''] = block;
  const text = block.join('\n');
  const line = at + 1;
  if (/^NOTE(?:[ \t]|$)/.test(first)) {
    return { block: { kind: 'note', text, line }, next, remark: null };
  }
  const kind = /^STYLE\s*$/.test(first) ? 'style' : /^REGION\s*$/.test(first) ? 'region' : null;
  // Both may only stand before the first cue (6.1).
  if (kind !== null && !cueSeen) return { block: { kind, text, line }, next, remark: null };
  const message =
    kind === null
      ? `“${first}” has no times: left out.`
      : `A ${kind} after the first cue counts for nothing: left out.`;
  return { block: null, next, remark: { line, code: 'block', message, skipped: true } };
}

function inOrder(remarks: readonly CaptionRemark[], cues: readonly Cue[]): CaptionRemark[] {
  return [...remarks, ...remarksOfTimes(cues)].sort((a, b) => a.line - b.line);
}
