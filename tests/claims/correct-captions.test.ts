import fc from 'fast-check';
import SrtParser from 'srt-parser-2';
import { describe, expect, it } from 'vitest';
import { correctCaptions } from '#lib/claims/correct-captions';
import { joinSpoken } from '#lib/claims/places/spoken-text';

const SRT = [
  '1',
  '00:00:01,000 --> 00:00:03,000',
  'The tray is <b>640</b> calories,',
  'all of it.',
  '',
  '2',
  '00:00:03,000 --> 00:00:05,500',
  'So half a tray is 320',
  'calories for  me.',
  '',
].join('\r\n');
const VTT = `WEBVTT - oats

NOTE 640 calories, they say

STYLE
::cue { color: white }

hook
00:01.000 --> 00:03.000 line:80%
<v Runa>The tray is 640&nbsp;calories.</v>

00:03.000 --> 00:05.000
It was 640 calories yesterday too.
`;

/** The correction of words, at their n-th place in what is said. */
function put(text: string, was: string, words: string, nth = 0) {
  const { text: said } = joinSpoken(text);
  let start = said.indexOf(was);
  for (let at = 0; at < nth; at += 1) start = said.indexOf(was, start + 1);
  if (start < 0) throw new Error(`“${was}” is not said`);
  return { start, end: start + was.length, words };
}

const captionFile = fc
  .array(
    fc.record({
      words: fc.array(fc.constantFrom('640', 'calories', 'of', '<i>oats</i>', 'a &amp; b', '\n'), {
        minLength: 1,
        maxLength: 8,
      }),
      gap: fc.nat(3),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .chain((cues) =>
    fc.tuple(fc.constant(cues), fc.constantFrom('\n', '\r\n'), fc.constantFrom('srt', 'vtt')),
  )
  .map(([cues, end, form]) => {
    const mark = form === 'srt' ? ',' : '.';
    const blocks = cues.map(({ words, gap }, at) => {
      const lines = words
        .join(' ')
        .split('\n')
        .map((line) => line.trim() || 'so');
      const time = (s: number) => `00:00:${String(s).padStart(2, '0')}${mark}000`;
      return [`${at + 1}`, `${time(at * 4)} --> ${time(at * 4 + gap + 1)}`, ...lines].join(end);
    });
    return `${form === 'vtt' ? `WEBVTT${end}${end}` : ''}${blocks.join(end + end)}${end}`;
  });

describe('captions with accepted corrections', () => {
  it('are the same to the byte without any', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          captionFile,
          fc.array(fc.nat(0xffff)).map((units) => String.fromCharCode(...units)),
        ),
        (text) => {
          expect(correctCaptions(text, [])).toEqual({ text, left: [] });
        },
      ),
    );
    expect(correctCaptions(VTT, []).text).toBe(VTT);
  });

  it('are the same to the byte where a correction has the words that are there', () => {
    const number = put(SRT, '320', '320');
    expect(correctCaptions(SRT, [number]).text).toBe(SRT);
  });

  it('change the words and nothing else; tags between them stay', () => {
    const { text, left } = correctCaptions(VTT, [put(VTT, '640 calories', 'about 610 calories')]);
    expect(left).toEqual([]);
    expect(text).toBe(VTT.replace('640&nbsp;calories', 'about 610 calories'));
    expect(correctCaptions(VTT, [put(VTT, '640', '1 < 2 & more')]).text).toContain(
      'is 1 &lt; 2 &amp; more&nbsp;calories',
    );
  });

  it('changes the place that was accepted and no other like it', () => {
    const second = put(VTT, '640 calories', '610 calories', 1);
    expect(correctCaptions(VTT, [second]).text).toBe(
      VTT.replace('It was 640 calories', 'It was 610 calories'),
    );
  });

  it('keeps the lines that the words ran over', () => {
    const { text } = correctCaptions(SRT, [put(SRT, '320\ncalories', 'about 305 calories')]);
    expect(text).toBe(
      SRT.replace('is 320\r\ncalories for  me', 'is about 305\r\ncalories for  me'),
    );
    expect(correctCaptions(SRT, [put(SRT, '320\ncalories', 'none')]).left[0]?.why).toContain(
      'fewer words',
    );
  });

  it('keeps all times by another reader, and all words but the corrected', () => {
    // srt-parser-2 1.2.3 reads both files.
    const parser = new SrtParser();
    const before = parser.fromSrt(SRT);
    const after = parser.fromSrt(
      correctCaptions(SRT, [put(SRT, '640 calories', 'about 610 calories')]).text,
    );
    const times = ({ id, startTime, endTime }: (typeof before)[number]) => [id, startTime, endTime];
    expect(after.map(times)).toEqual(before.map(times));
    expect(after[0]?.text).toBe('The tray is <b>about 610 calories</b>,\nall of it.');
    expect(after[1]).toEqual(before[1]);
  });

  it('corrects a line of rolling captions wherever it is shown', () => {
    const rolling = [
      'WEBVTT',
      '',
      '00:00.000 --> 00:02.000',
      'the tray is',
      '640 calories',
      '',
      '00:02.000 --> 00:04.000',
      '640 calories',
      'and my half',
      '',
      '00:04.000 --> 00:06.000',
      'and my half',
      'has 320',
      '',
    ].join('\n');
    const { text } = correctCaptions(rolling, [put(rolling, '640', '610')]);
    expect(text).toBe(rolling.replaceAll('640', '610'));
  });

  it('leaves all outside the corrected stretches as it is, in any file', () => {
    fc.assert(
      fc.property(captionFile, (file) => {
        const { text: said } = joinSpoken(file);
        const found = [...said.matchAll(/640/g)].map(({ index }) => {
          return { start: index, end: index + 3, words: '@@@@' };
        });
        const { text, left } = correctCaptions(file, found);
        expect(left).toEqual([]);
        expect(text.replaceAll('@@@@', '640')).toBe(file);
        if (found.length > 0) expect(joinSpoken(text).text).toContain('@@@@');
        expect(joinSpoken(text).lines.map(({ startMs, endMs }) => [startMs, endMs])).toEqual(
          joinSpoken(file).lines.map(({ startMs, endMs }) => [startMs, endMs]),
        );
      }),
    );
  });

  it('leaves out what overlaps, what is not there, and a transcript', () => {
    const one = put(SRT, '640 calories', '610 calories');
    const over = { start: one.start + 4, end: one.end + 1, words: 'kcal' };
    expect(correctCaptions(SRT, [one, over]).left).toHaveLength(1);
    expect(correctCaptions(SRT, [{ start: 9000, end: 9010, words: 'x' }]).left).toHaveLength(1);
    const plain = 'The tray is 640 calories.';
    expect(correctCaptions(plain, [put(plain, '640', '610')])).toMatchObject({
      text: plain,
      left: [{ words: '610' }],
    });
  });
});
