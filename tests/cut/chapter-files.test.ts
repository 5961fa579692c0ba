import { describe, expect, it } from 'vitest';
import { cuesOf } from '#lib/cut/captions';
import { chapterFaults, chapterLines } from '#lib/cut/chapters';
import { chapterMends } from '#lib/cut/mend-chapters';
import { readWebVtt } from '#lib/cut/read-webvtt';
import { secondsToSay, wordsIn, wordsPerMinute } from '#lib/cut/speaking-rate';
import { ffmpegChapters, webVttChapters } from '#lib/cut/write-chapters';

const chapters = (...starts: number[]) =>
  starts.map((startS, index) => ({ startS, title: `part ${index + 1}` }));

describe('chapters as a file', () => {
  it('of FFmpeg, as its documentation prints one (doc/metadata.texi)', () => {
    expect(ffmpegChapters([{ title: 'chapter #1', startS: 0 }], 60)).toBe(
      ';FFMETADATA1\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND=60000\ntitle=chapter \\#1\n',
    );
  });

  it('of WebVTT: consecutive cues, titles as text (W3C WebVTT 4.6)', () => {
    const file = webVttChapters(
      [
        { title: 'Oats & <oil>', startS: 0 },
        { title: 'End', startS: 65 },
      ],
      3725,
    );
    const { blocks, remarks } = readWebVtt(file);
    expect(remarks).toEqual([]);
    expect(cuesOf({ blocks }).map(({ startMs, endMs, text }) => [startMs, endMs, text])).toEqual([
      [0, 65_000, 'Oats &amp; &lt;oil&gt;'],
      [65_000, 3_725_000, 'End'],
    ]);
  });

  it('of lines: m:ss below an hour, h:mm:ss from there (common practice, no source)', () => {
    expect(chapterLines(chapters(65, 3725))).toEqual(['1:05 part 1', '1:02:05 part 2']);
  });
});

describe('a list of chapters that breaks a rule', () => {
  it('is offered ways to keep it, and each is better', () => {
    const short = chapters(0, 9, 30, 60);
    const mends = chapterMends(short);
    expect(mends.map(({ words }) => words)).toEqual([
      'begin “part 2” 1 s later, at 0:10',
      'join “part 1” with “part 2”',
    ]);
    for (const mend of mends) expect(chapterFaults(mend.chapters)).toEqual([]);
  });

  it('is put in order, and begins at 0:00', () => {
    const [mend] = chapterMends(chapters(0, 60, 30, 90));
    expect(mend?.chapters.map(({ startS }) => startS)).toEqual([0, 30, 60, 90]);
    expect(chapterMends(chapters(5, 60, 90))[0]?.words).toBe('let “part 1” begin at 0:00');
  });

  it('is left alone where it keeps them all, or where no way leads there', () => {
    expect(chapterMends(chapters(0, 10, 20))).toEqual([]);
    expect(chapterMends(chapters(0, 60))).toEqual([]);
  });
});

describe('how fast somebody speaks', () => {
  // National Center for Voice and Speech: about 150 words a minute, so 300 words take 120 s.
  it('says how long words take', () => {
    expect(secondsToSay(300, 150)).toBe(120);
  });

  it.each([
    ['the whole tray', 3],
    ['1,250 kcal', 7],
    ['20 g', 2],
    ['46', 2],
    ['12.5', 3],
    ['it’s 180°C', 6],
  ])('counts words as they are spoken: %s', (text, words) => {
    expect(wordsIn(text)).toBe(words);
  });

  it('is measured by captions, without pauses, and not by a few words', () => {
    const line = (startMs: number, endMs: number) => ({
      startMs,
      endMs,
      text: Array.from({ length: 25 }, () => 'word').join(' '),
      line: 1,
    });
    const lines = [line(0, 10_000), line(10_000, 20_000), line(60_000, 70_000)];
    expect(wordsPerMinute(lines)).toBe(150);
    expect(wordsPerMinute(lines.slice(0, 2))).toBeNull();
  });
});
