import fc from 'fast-check';
import SrtParser from 'srt-parser-2';
import { describe, expect, it } from 'vitest';
import webvtt, { type WebVttCue } from 'webvtt-parser';
import { captionWords } from '#lib/cut/caption-words';
import { cuesOf, type Captions, type Cue } from '#lib/cut/captions';
import { readSubRip } from '#lib/cut/read-subrip';
import { readWebVtt } from '#lib/cut/read-webvtt';
import { writeSubRip, writeWebVtt } from '#lib/cut/write-captions';
import { parseByTheLetter } from './webvtt-by-the-letter';

// `webvtt-parser` is W3C's own parser and validator (w3c/webvtt.js); it sorts cues by their times.
const theirs = (text: string): WebVttCue[] =>
  new webvtt.WebVTTParser().parse(text, 'metadata').cues;
const told = (cue: { name: string; startMs: number; endMs: number; text: string }) =>
  JSON.stringify([cue.name, cue.startMs, cue.endMs, cue.text]);
const theirCues = (text: string) =>
  theirs(text)
    .map(({ id, startTime, endTime, text: words }) =>
      told({
        name: id,
        startMs: Math.round(startTime * 1000),
        endMs: Math.round(endTime * 1000),
        text: words,
      }),
    )
    .sort();
const ourCues = (text: string) => cuesOf(readWebVtt(text)).map(told).sort();

const letterCues = (text: string) => parseByTheLetter(text).map(told).sort();

const vtt = (...lines: string[]) => ['WEBVTT', '', ...lines].join('\n');

describe('WebVTT files, beside W3C’s own parser', () => {
  // Built from the text of W3C WebVTT: the section that decides stands beside each.
  it.each([
    [
      'names, settings and lines (6.1)',
      vtt('intro', '00:01.000 --> 00:04.000 line:0 align:start', 'one', 'two'),
    ],
    ['hours of two digits or more (3.3)', vtt('100:00:00.000 --> 100:00:01.000', 'late')],
    [
      'a space or tab behind the signature (6.1, step 6)',
      'WEBVTT\tharbor\n\n00:01.000 --> 00:02.000\nHi',
    ],
    [
      'a header under the signature (6.1, step 11)',
      'WEBVTT\nKind: captions\n\n00:01.000 --> 00:02.000\nHi',
    ],
    ['a cue right under the signature (6.1, step 12)', 'WEBVTT\n00:01.000 --> 00:02.000\nHi'],
    [
      'CRLF (6.1, step 4)',
      vtt('00:01.000 --> 00:02.000', 'a', '', '00:03.000 --> 00:04.000', 'b').replaceAll(
        '\n',
        '\r\n',
      ),
    ],
    [
      'CR (6.1, step 4)',
      vtt('00:01.000 --> 00:02.000', 'a', '', '00:03.000 --> 00:04.000', 'b').replaceAll(
        '\n',
        '\r',
      ),
    ],
    ['NUL (6.1, step 3)', vtt('00:01.000 --> 00:02.000', 'a\0b')],
    [
      'an arrow without an empty line before (collect a block)',
      vtt('00:01.000 --> 00:02.000', 'a', '00:03.000 --> 00:04.000', 'b'),
    ],
    [
      'notes between cues (4.1, comment block)',
      vtt('NOTE weighed', 'twice', '', '00:01.000 --> 00:02.000', 'a', '', 'NOTE', 'b'),
    ],
    [
      'a style before the first cue (4.1, style block)',
      vtt('STYLE', '::cue { color: lime }', '', '00:01.000 --> 00:02.000', 'a'),
    ],
    [
      'minutes above 59 (6.3, timestamps)',
      vtt('00:61:00.000 --> 00:62:00.000', 'gone', '', '00:03.000 --> 00:04.000', 'a'),
    ],
    [
      'seconds above 59 (6.3)',
      vtt('00:61.000 --> 00:62.000', 'gone', '', '00:03.000 --> 00:04.000', 'a'),
    ],
    ['no cue at all', 'WEBVTT'],
    [
      'no words (6.1, collect a block)',
      vtt('00:01.000 --> 00:02.000', '', '00:03.000 --> 00:04.000', 'b'),
    ],
    ['blanks and tabs about the arrow (6.2)', vtt('00:01.000   -->\t00:02.000\tline:0', 'a')],
    ['no blanks about the arrow (6.2)', vtt('00:01.000-->00:02.000', 'a')],
    ['a name of more words', vtt('the first one', '00:01.000 --> 00:02.000', 'a')],
  ])('%s are read alike', (_name, text) => {
    expect(ourCues(text)).toEqual(theirCues(text));
    expect(ourCues(text)).toEqual(letterCues(text));
  });

  it('two lines above the times are no name (6.1, collect a block): they take the second, we none', () => {
    const text = vtt('a', 'b', '00:01.000 --> 00:02.000', 'c');
    expect(letterCues(text)).toEqual(['["",1000,2000,"c"]']);
    expect(ourCues(text)).toEqual(letterCues(text));
    expect(theirCues(text)).toEqual(['["b",1000,2000,"c"]']);
  });

  it('NOTE or STYLE right above the times is a name (6.1): they leave the cue out, we read it', () => {
    const text = vtt('NOTE', '00:01.000 --> 00:02.000', 'c');
    expect(ourCues(text)).toEqual(letterCues(text));
    expect(theirCues(text)).toEqual([]);
  });

  // Where the two differ, the standard decides.
  it.each([
    ['a comma for the full stop (3.3)', '00:01,000 --> 00:02,000'],
    ['two decimals (3.3)', '00:01.00 --> 00:02.00'],
  ])(
    '%s is no time of the standard: they drop it, we read it with a remark, so that no word is lost',
    (_name, times) => {
      const text = vtt(times, 'words');
      expect(theirs(text)).toEqual([]);
      expect(cuesOf(readWebVtt(text))).toHaveLength(1);
      expect(readWebVtt(text).remarks).toMatchObject([{ code: 'times', skipped: false }]);
    },
  );

  const words = fc.stringMatching(/^[A-Za-zé .,;&<>-]{1,14}$/);
  const file = fc
    .array(
      fc.record({
        name: fc.constantFrom('', 'a', '12', 'a name'),
        startMs: fc.nat({ max: 400_000_000 }),
        lasts: fc.integer({ min: 1, max: 60_000 }),
        settings: fc.constantFrom('', 'line:0', 'position:10% align:start'),
        lines: fc.array(words, { minLength: 1, maxLength: 3 }),
      }),
      { maxLength: 8 },
    )
    .map((cues): Captions => ({
      format: 'webvtt',
      head: '',
      remarks: [],
      blocks: cues.map(({ lasts, lines, ...rest }): Cue => ({
        kind: 'cue',
        ...rest,
        endMs: rest.startMs + lasts,
        text: lines.join('\n').replaceAll('-->', '->'),
        line: 0,
      })),
    }));

  it('that we write are read by them as by us, whatever is said', () => {
    fc.assert(
      fc.property(file, (captions) => {
        const text = writeWebVtt(captions);
        expect(ourCues(text)).toEqual(theirCues(text));
        expect(ourCues(text)).toHaveLength(captions.blocks.length);
      }),
    );
  });

  // Lines that mean something to a parser, in any order.
  const line = fc.constantFrom(
    '',
    '',
    'words',
    'NOTE',
    'NOTE a',
    'STYLE',
    'REGION',
    '00:01.000 --> 00:02.000',
    '00:05.000 --> 00:06.500 line:0',
    '01:00:00.000 --> 01:00:01.000',
    'x --> y',
    '00:61.000 --> 00:62.000',
    'two words',
    ' 00:07.000 --> 00:08.000',
    '-->',
    'WEBVTT',
    '00:01.000 --> 00:02.000line:0',
  );

  it('of any lines whatever are read as the standard’s algorithm reads them, letter by letter', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 14 }), (lines) => {
        const text = vtt(...lines);
        expect(ourCues(text)).toEqual(letterCues(text));
      }),
      { numRuns: 1000 },
    );
  });

  it('of any lines are read by them alike too, where every block of a cue has one line above its times at most, and no comment', () => {
    let compared = 0;
    fc.assert(
      fc.property(fc.array(line, { maxLength: 10 }), (lines) => {
        const text = vtt(...lines);
        const blocks = text.split(/\n{2,}/);
        const apart = blocks.some(
          (block) =>
            /^(?:NOTE|STYLE)/m.test(block) || /^(?!.*-->).+\n(?!.*-->).+\n.*-->/m.test(block),
        );
        if (apart) return;
        compared += 1;
        expect(ourCues(text)).toEqual(theirCues(text));
      }),
      { numRuns: 1000 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

describe('SubRip files, beside srt-parser-2', () => {
  // No standard: the form from memory. They trim each cue's words.
  const others = (text: string) =>
    new SrtParser()
      .fromSrt(text)
      .map(({ id, startSeconds, endSeconds, text: words }) => [
        id,
        startSeconds,
        endSeconds,
        words,
      ]);
  const ours = (text: string) =>
    cuesOf(readSubRip(text)).map(({ name, startMs, endMs, text: words }) => [
      name,
      startMs / 1000,
      endMs / 1000,
      words.trim(),
    ]);

  const words = fc.stringMatching(/^[A-Za-zé .,;&<>]{0,13}[A-Za-z]$/).map((text) => text.trim());
  const file = fc
    .array(
      fc.tuple(
        fc.nat({ max: 9_000_000 }),
        fc.integer({ min: 1, max: 60_000 }),
        fc.array(words, { minLength: 1, maxLength: 3 }),
      ),
      { minLength: 1, maxLength: 8 },
    )
    .map((cues): Captions => ({
      format: 'subrip',
      head: '',
      remarks: [],
      blocks: cues.map(([startMs, lasts, lines]): Cue => ({
        kind: 'cue',
        name: '',
        startMs,
        endMs: startMs + lasts,
        settings: '',
        text: lines.join('\n'),
        line: 0,
      })),
    }));

  it('that we write are read alike, whatever is said', () => {
    fc.assert(
      fc.property(file, (captions) => {
        const text = writeSubRip(captions);
        expect(ours(text)).toEqual(others(text));
        expect(ours(text)).toHaveLength(captions.blocks.length);
      }),
    );
  });

  it.each([
    ['LF', '1\n00:00:01,000 --> 00:00:02,500\nHi\n\n2\n00:00:03,000 --> 00:00:04,000\nBye\n'],
    [
      'empty lines within',
      '1\n00:00:01,000 --> 00:00:02,500\na\n\nb\n\n2\n00:00:03,000 --> 00:00:04,000\nc\n',
    ],
    ['hours of one digit', '1\n0:00:01,000 --> 0:00:02,500\nHi\n'],
    ['full stops', '1\n00:00:01.000 --> 00:00:02.500\nHi\n'],
    ['fewer decimals', '1\n00:00:01,5 --> 00:00:02,25\nHi\n'],
  ])('with %s are read alike', (_name, text) => {
    expect(ours(text)).toEqual(others(text));
  });

  // What they lose and we keep: their form asks for a number, three parts of a time, one mark throughout.
  it.each([
    ['a cue without a number', '00:00:01,000 --> 00:00:02,000\nfirst\n'],
    ['times without hours', '1\n00:01,000 --> 00:02,000\nfirst\n'],
    ['a full stop beside a comma', '1\n00:00:01.000 --> 00:00:02,000\nfirst\n'],
    ['coordinates behind the times', '1\n00:00:01,000 --> 00:00:02,000 X1:1 X2:2\nfirst\n'],
  ])('%s: no word is lost', (_name, text) => {
    expect(cuesOf(readSubRip(text)).map((cue) => captionWords(cue.text))).toEqual(['first']);
    expect(others(text).map(([, , , said]) => said)).not.toEqual(['first']);
  });
});
