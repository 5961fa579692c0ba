import { describe, expect, it } from 'vitest';
import { cuesOf } from '#lib/cut/captions';
import { readSubRip } from '#lib/cut/read-subrip';
import { readWebVtt } from '#lib/cut/read-webvtt';
import { readSpoken } from '#lib/cut/spoken';

const two = (value: number) => String(value).padStart(2, '0');
const clock = (second: number) =>
  `${two(Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;

/** Captions of so many bytes at least, a cue of one line a second; the words are invented and of ASCII. */
function captionsOf(bytes: number, format: 'webvtt' | 'subrip'): { text: string; cues: number } {
  const words = 'then 180 grams of pearl barley go into the dry pot and are toasted, '.repeat(6);
  const mark = format === 'webvtt' ? '.' : ',';
  const parts = format === 'webvtt' ? ['WEBVTT\n'] : [];
  let length = 0;
  let cues = 0;
  while (length < bytes) {
    cues += 1;
    const times = `${clock(cues)}${mark}000 --> ${clock(cues)}${mark}900`;
    const part = `${cues}\n${times}\nnumber ${cues}, ${words}\n`;
    parts.push(part);
    length += part.length + 1;
  }
  return { text: parts.join('\n'), cues };
}

const MEGABYTE = 1024 * 1024;

/** Bytes of the heap that are in use. */
const held = () => process.memoryUsage().heapUsed;

describe.each(['webvtt', 'subrip'] as const)('50 MB of captions in %s', (format) => {
  it('are read to the last cue, and hold a few times their own size at most', () => {
    const { text, cues } = captionsOf(50 * MEGABYTE, format);
    expect(text.length).toBeGreaterThanOrEqual(50 * MEGABYTE);
    const before = held();
    const captions = format === 'webvtt' ? readWebVtt(text) : readSubRip(text);
    const grown = held() - before;
    const all = cuesOf(captions);
    expect(all).toHaveLength(cues);
    expect(all.at(-1)).toMatchObject({ name: String(cues), startMs: cues * 1000 });
    expect(all.at(-1)?.text).toContain(`number ${cues},`);
    expect(captions.remarks).toEqual([]);
    // Lines and cues are parts of the text or as long as it; garbage that is not cleared yet is counted too.
    expect(grown).toBeLessThan(8 * text.length);
  }, 120_000);
});

describe('captions of any length', () => {
  it.each([1, 10, 100])(
    'of %i times 100 kB keep no more letters than the file has, and a line for each cue',
    (times) => {
      const { text, cues } = captionsOf(times * 100_000, 'webvtt');
      const spoken = readSpoken(text);
      if (!spoken.ok) throw new Error('these captions cannot be read');
      const { lines, captions, remarks } = spoken.value;
      const letters = lines.reduce((sum, line) => sum + line.text.length, 0);
      const kept = JSON.stringify(captions).length;
      expect(lines).toHaveLength(cues);
      expect(letters).toBeLessThanOrEqual(text.length);
      // Names of fields and numbers beside the words: the same for each cue, so that it grows with the file.
      expect(kept - letters).toBeLessThan(200 * cues);
      expect(remarks).toEqual([]);
    },
  );

  it('beyond the most that is read are refused in words, before anything is read', () => {
    const read = readSpoken('x'.repeat(64 * MEGABYTE + 1));
    expect(read).toMatchObject({ ok: false, problems: [{ code: 'too-long' }] });
  });
});
