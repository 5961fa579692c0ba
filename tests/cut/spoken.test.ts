import { describe, expect, it } from 'vitest';
import { readSpoken, type SpokenLine } from '#lib/cut/spoken';

function said(text: string): readonly SpokenLine[] {
  const read = readSpoken(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value.lines;
}

describe('what was said', () => {
  it('comes from WebVTT, SubRip, a transcript or bare words, told apart by what they are', () => {
    const format = (text: string) => {
      const read = readSpoken(text);
      return read.ok ? read.value.format : null;
    };
    expect(format('\uFEFFWEBVTT\n\n00:01.000 --> 00:02.000\nHi')).toBe('webvtt');
    expect(format('1\n00:00:01,000 --> 00:00:02,000\nHi')).toBe('subrip');
    expect(format('[0:05] Hi')).toBe('transcript');
    expect(format('Half of that is 320 calories.')).toBe('words');
  });

  it('is refused in words where there are none', () => {
    expect(readSpoken(' \n')).toMatchObject({ ok: false, problems: [{ code: 'empty' }] });
  });

  it('is said once where captions roll', () => {
    const text = `WEBVTT

00:01.000 --> 00:02.000
so the whole tray

00:02.000 --> 00:03.000
so the whole tray
is 1,362 calories

00:03.000 --> 00:04.000
is 1,362 calories
and 127 protein`;
    expect(said(text).map((line) => line.text)).toEqual([
      'so the whole tray',
      'is 1,362 calories',
      'and 127 protein',
    ]);
  });

  it('is said twice where it was said again after a pause', () => {
    const text = 'WEBVTT\n\n00:01.000 --> 00:02.000\n640\n\n00:05.000 --> 00:06.000\n640';
    expect(said(text)).toHaveLength(2);
  });

  it('has the times of a transcript’s marks, in brackets, parentheses or before the line', () => {
    expect(said('hello\n[0:05] Barley first (0:09) then oil\n1:02:03 the day')).toEqual([
      { startMs: null, endMs: null, text: 'hello', line: 1 },
      { startMs: 5000, endMs: 9000, text: 'Barley first', line: 2 },
      { startMs: 9000, endMs: 3_723_000, text: 'then oil', line: 2 },
      { startMs: 3_723_000, endMs: null, text: 'the day', line: 3 },
    ]);
  });

  it('takes no temperature, ratio or clock within a sentence for a mark', () => {
    expect(said('[0:05] mix it 2:1 and be done by 12:40 sharp')).toHaveLength(1);
  });
});
