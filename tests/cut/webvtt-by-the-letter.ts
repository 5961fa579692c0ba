/** A cue as the standard's parser gives it, times in milliseconds. */
export interface LetterCue {
  readonly name: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
}

/**
 * The parser of W3C WebVTT 6.1 and 6.3 as it is written there, step by step ("WebVTT parser algorithm", "collect a
 * WebVTT block", "collect WebVTT cue timings and settings", "collect a WebVTT timestamp"; the steps from memory), with
 * none of our reader's code: what it gives is what the standard gives.
 */
export function parseByTheLetter(file: string): LetterCue[] {
  const input = file.replace(/\0/g, '\uFFFD').replace(/\r\n/g, '\n').replace(/\r/g, '\n');
  let position = 0;
  const atEnd = () => position >= input.length;
  const collectLine = () => {
    const end = input.indexOf('\n', position);
    const line = input.slice(position, end < 0 ? input.length : end);
    position = end < 0 ? input.length : end;
    return line;
  };
  const first = collectLine();
  if (!/^WEBVTT(?:[ \t]|$)/.test(first) || atEnd()) return [];
  position += 1;
  if (atEnd()) return [];
  const cues: LetterCue[] = [];

  const collectBlock = (inHeader: boolean): LetterCue | null => {
    let lineCount = 0;
    let previousPosition = position;
    let buffer = '';
    let seenEnd = false;
    let seenArrow = false;
    let cue: Omit<LetterCue, 'text'> | null = null;
    for (;;) {
      const line = collectLine();
      lineCount += 1;
      if (atEnd()) seenEnd = true;
      else position += 1;
      if (line.includes('-->')) {
        if (!inHeader && (lineCount === 1 || (lineCount === 2 && !seenArrow))) {
          seenArrow = true;
          previousPosition = position;
          const times = collectTimings(line);
          if (times === null) cue = null;
          else {
            cue = { name: buffer, ...times };
            buffer = '';
          }
        } else {
          position = previousPosition;
          break;
        }
      } else if (line === '') break;
      else {
        buffer = buffer === '' ? line : `${buffer}\n${line}`;
        previousPosition = position;
      }
      if (seenEnd) break;
    }
    return cue === null ? null : { ...cue, text: buffer };
  };

  if (input[position] === '\n') position += 1;
  else collectBlock(true);
  const skipEmpty = () => {
    while (input[position] === '\n') position += 1;
  };
  skipEmpty();
  while (!atEnd()) {
    const cue = collectBlock(false);
    if (cue !== null) cues.push(cue);
    skipEmpty();
  }
  return cues;
}

function collectTimings(line: string): { readonly startMs: number; readonly endMs: number } | null {
  let at = 0;
  const skip = () => {
    while (/[ \t\f]/.test(line[at] ?? '')) at += 1;
  };
  const digits = () => {
    const from = at;
    while (/[0-9]/.test(line[at] ?? '')) at += 1;
    return line.slice(from, at);
  };
  const timestamp = (): number | null => {
    let hours = false;
    const one = digits();
    if (one === '') return null;
    if (one.length !== 2 || Number(one) > 59) hours = true;
    if (line[at] !== ':') return null;
    at += 1;
    const two = digits();
    if (two.length !== 2) return null;
    let parts = ['0', one, two];
    if (hours || line[at] === ':') {
      if (line[at] !== ':') return null;
      at += 1;
      const three = digits();
      if (three.length !== 2) return null;
      parts = [one, two, three];
    }
    if (line[at] !== '.') return null;
    at += 1;
    const thousandths = digits();
    const [hour, minute, second] = parts.map(Number) as [number, number, number];
    if (thousandths.length !== 3 || minute > 59 || second > 59) return null;
    return ((hour * 60 + minute) * 60 + second) * 1000 + Number(thousandths);
  };
  skip();
  const startMs = timestamp();
  if (startMs === null) return null;
  skip();
  if (line.slice(at, at + 3) !== '-->') return null;
  at += 3;
  skip();
  const endMs = timestamp();
  return endMs === null ? null : { startMs, endMs };
}
