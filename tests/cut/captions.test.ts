import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  printCaptionTime,
  readCaptionTime,
  readWebVttTime,
  SUBRIP_TIME,
  WEBVTT_TIME,
} from '#lib/cut/caption-times';
import { captionWords } from '#lib/cut/caption-words';
import { cuesOf } from '#lib/cut/captions';
import { decodeText } from '#lib/cut/decode-text';
import { readSubRip } from '#lib/cut/read-subrip';
import { readWebVtt } from '#lib/cut/read-webvtt';
import { writeSubRip, writeWebVtt } from '#lib/cut/write-captions';

const vtt = (...lines: string[]) => ['WEBVTT', '', ...lines].join('\n');

describe('times of captions', () => {
  // W3C WebVTT 3.3 "WebVTT timestamp".
  it.each([
    ['01:02:03.500', 3_723_500],
    ['02:03.500', 123_500],
    ['100:00:00.000', 360_000_000],
    ['1:02:03.000', null],
    ['00:60.000', null],
    ['60:00.000', null],
    ['00:01,000', null],
    ['00:01.00', null],
    ['-00:01.000', null],
  ])('WebVTT lets %s be written: %s', (text, ms) => {
    expect(readWebVttTime(text)).toBe(ms);
  });

  it.each([
    [3_723_500, '01:02:03.500', '01:02:03,500'],
    [0, '00:00.000', '00:00:00,000'],
    [59_999, '00:59.999', '00:00:59,999'],
    [60_000, '01:00.000', '00:01:00,000'],
  ])('%s ms is %s in WebVTT and %s in SubRip', (ms, webVtt, subRip) => {
    expect(printCaptionTime(ms, WEBVTT_TIME)).toBe(webVtt);
    expect(printCaptionTime(ms, SUBRIP_TIME)).toBe(subRip);
  });

  it('are read as they were written, whatever they are', () => {
    fc.assert(
      fc.property(fc.nat({ max: 400 * 3_600_000 }), (ms) => {
        expect(readWebVttTime(printCaptionTime(ms, WEBVTT_TIME))).toBe(ms);
        expect(readCaptionTime(printCaptionTime(ms, SUBRIP_TIME))).toBe(ms);
      }),
    );
  });
});

describe('a WebVTT file by the parser rules of the standard (W3C WebVTT 6.1)', () => {
  it('has its cues with names, settings and lines', () => {
    const { blocks, remarks } = readWebVtt(
      vtt('intro', '00:01.000 --> 00:04.000 line:0 align:start', 'Two lines', '- <i>of words</i>'),
    );
    expect(blocks).toEqual([
      {
        kind: 'cue',
        name: 'intro',
        startMs: 1000,
        endMs: 4000,
        settings: 'line:0 align:start',
        text: 'Two lines\n- <i>of words</i>',
        line: 4,
      },
    ]);
    expect(remarks).toEqual([]);
  });

  it('takes LF, CRLF and CR alike, and NUL as the replacement character (6.1, steps 3 and 4)', () => {
    const text = vtt('00:01.000 --> 00:02.000', 'a\0b', '', '00:03.000 --> 00:04.000', 'c');
    const of = (end: string) => cuesOf(readWebVtt(text.replaceAll('\n', end)));
    expect(of('\r\n')).toEqual(of('\n'));
    expect(of('\r')).toEqual(of('\n'));
    expect(of('\n')[0]?.text).toBe('a\uFFFDb');
  });

  it('may have words behind the signature and a header under it, which are no cue', () => {
    const captions = readWebVtt(
      'WEBVTT - harbor day\nKind: captions\n\n00:01.000 --> 00:02.000\nHi',
    );
    expect(captions.head).toBe('- harbor day\nKind: captions');
    expect(cuesOf(captions)).toHaveLength(1);
  });

  it('says so where the signature is missing or runs on (6.1, step 6), and reads on', () => {
    const { blocks, remarks } = readWebVtt('WEBVTTX\n\n00:01.000 --> 00:02.000\nHi');
    expect(blocks).toHaveLength(1);
    expect(remarks[0]).toMatchObject({ line: 1, code: 'signature' });
  });

  it('begins a new cue at an arrow without an empty line between (collect a block, step 11)', () => {
    const cues = cuesOf(
      readWebVtt(vtt('00:01.000 --> 00:02.000', 'one', '00:03.000 --> 00:04.000', 'two')),
    );
    expect(cues.map(({ text }) => text)).toEqual(['one', 'two']);
  });

  it('keeps notes anywhere, styles and regions before the first cue only', () => {
    const { blocks, remarks } = readWebVtt(
      vtt(
        'STYLE',
        '::cue { color: lime }',
        '',
        'REGION',
        'id:low',
        '',
        'NOTE weighed on the quay',
        '',
        '00:01.000 --> 00:02.000',
        'Hi',
        '',
        'NOTE',
        'later',
        '',
        'STYLE',
        '::cue { color: red }',
      ),
    );
    expect(blocks.map(({ kind }) => kind)).toEqual(['style', 'region', 'note', 'cue', 'note']);
    expect(remarks).toMatchObject([{ line: 17, code: 'block', skipped: true }]);
  });

  it('leaves out a cue whose times cannot be read, by its line, and reads what follows', () => {
    const { blocks, remarks } = readWebVtt(
      vtt('00:61.000 --> 00:62.000', 'gone', '', '00:03.000 --> 00:04.000', 'there'),
    );
    expect(blocks).toMatchObject([{ text: 'there' }]);
    expect(remarks).toMatchObject([{ line: 3, code: 'times', skipped: true }]);
  });

  it('reads an hour of one digit as its parser does, and remarks that it may not be written so', () => {
    const { blocks, remarks } = readWebVtt(vtt('1:02:03.000 --> 1:02:04.000', 'late'));
    expect(blocks).toMatchObject([{ startMs: 3_723_000 }]);
    expect(remarks).toMatchObject([{ code: 'times', skipped: false }]);
  });

  it('remarks overlaps, an order that goes back, and an end before its beginning', () => {
    const { blocks, remarks } = readWebVtt(
      vtt(
        '00:01.000 --> 00:05.000',
        'a',
        '',
        '00:04.000 --> 00:06.000',
        'b',
        '',
        '00:02.000 --> 00:03.000',
        'c',
        '',
        '00:09.000 --> 00:08.000',
        'd',
      ),
    );
    expect(blocks).toHaveLength(4);
    expect(remarks.map(({ code }) => code)).toEqual(['overlap', 'order', 'backwards']);
  });
});

describe('a SubRip file (no standard; from memory)', () => {
  const file =
    '1\r\n00:00:01,000 --> 00:00:02,500\r\n<i>Hi</i>\r\nthere\r\n\r\n2\r\n00:00:03,000 --> 00:00:04,000\r\n{\\an8}Bye\r\n';

  it('is read and written to the byte', () => {
    const captions = readSubRip(file);
    expect(captions.remarks).toEqual([]);
    expect(cuesOf(captions).map(({ text }) => captionWords(text))).toEqual(['Hi\nthere', 'Bye']);
    expect(writeSubRip(captions)).toBe(file);
  });

  it('loses no word to missing numbers, full stops, missing hours and empty lines within', () => {
    const { blocks, remarks } = readSubRip(
      '00:01.5 --> 00:02.5\none\n\ntwo\n\n7\n0:00:03,000 --> 0:00:04,000\nthree',
    );
    expect(blocks).toMatchObject([
      { name: '', startMs: 1500, text: 'one\n\ntwo' },
      { name: '7', startMs: 3000, text: 'three' },
    ]);
    expect(remarks).toMatchObject([{ line: 1, code: 'number', skipped: false }]);
  });

  it('leaves out what stands at a time below zero, and says where', () => {
    const { blocks, remarks } = readSubRip(
      '1\n-00:00:01,000 --> 00:00:01,000\nbefore\n\n2\n00:00:02,000 --> 00:00:03,000\nthen',
    );
    expect(blocks).toMatchObject([{ text: 'then' }]);
    expect(remarks).toMatchObject([{ line: 2, code: 'times', skipped: true }]);
  });

  it('keeps a number that is said', () => {
    const { blocks } = readSubRip('1\n00:00:01,000 --> 00:00:02,000\ncalories\n640\n');
    expect(blocks).toMatchObject([{ text: 'calories\n640' }]);
  });
});

describe('captions written again', () => {
  const words = fc.stringMatching(/^[A-Za-zé ~&;]{1,12}$/).map((text) => text.trim() || 'x');
  const cue = fc.record({
    name: fc.constantFrom('', 'a', '12'),
    startMs: fc.nat({ max: 9_000_000 }),
    lasts: fc.integer({ min: 1, max: 60_000 }),
    settings: fc.constantFrom('', 'line:0', 'position:10% align:start'),
    lines: fc.array(words, { minLength: 1, maxLength: 3 }),
  });
  const file = fc.array(cue, { maxLength: 8 }).map((cues) => ({
    format: 'webvtt' as const,
    head: '',
    remarks: [],
    blocks: cues.map(({ lasts, lines, ...rest }) => ({
      kind: 'cue' as const,
      ...rest,
      endMs: rest.startMs + lasts,
      text: lines.join('\n'),
      line: 0,
    })),
  }));
  const bare = (captions: ReturnType<typeof readWebVtt>) =>
    cuesOf(captions).map(({ line: _line, ...rest }) => rest);

  it('are the same in WebVTT', () => {
    fc.assert(
      fc.property(file, (captions) => {
        expect(bare(readWebVtt(writeWebVtt(captions)))).toEqual(bare(captions));
      }),
    );
  });

  it('say the same in SubRip', () => {
    fc.assert(
      fc.property(file, (captions) => {
        const again = cuesOf(readSubRip(writeSubRip(captions)));
        const said = (cues: ReturnType<typeof cuesOf>) =>
          cues.map(({ startMs, endMs, text }) => ({ startMs, endMs, text }));
        expect(said(again)).toEqual(said(cuesOf(captions)));
      }),
    );
  });

  it('never have an arrow within the words of a cue (W3C WebVTT 3.1)', () => {
    const captions = readSubRip('1\n00:00:01,000 --> 00:00:01,000\nput -> in');
    const [only] = cuesOf(captions);
    const odd = { ...captions, blocks: only ? [{ ...only, text: 'this --> that' }] : [] };
    const written = writeWebVtt(odd);
    expect(written).toContain('this --&gt; that');
    expect(cuesOf(readWebVtt(written)).map(({ text }) => captionWords(text))).toEqual([
      'this --> that',
    ]);
  });
});

describe('how a file is written in bytes', () => {
  const text = 'WEBVTT\n\n00:01.000 --> 00:02.000\ncrème brûlée 180 kcal';
  const wide = (little: boolean) =>
    Uint8Array.from(
      [...text].flatMap((letter) => {
        const code = letter.charCodeAt(0);
        return little ? [code & 255, code >> 8] : [code >> 8, code & 255];
      }),
    );

  it.each([
    ['UTF-8', new TextEncoder().encode(text), 'utf-8'],
    [
      'UTF-8 with a mark',
      Uint8Array.of(0xef, 0xbb, 0xbf, ...new TextEncoder().encode(text)),
      'utf-8',
    ],
    ['UTF-16 with a mark', Uint8Array.of(0xff, 0xfe, ...wide(true)), 'utf-16le'],
    ['UTF-16, big end first, with a mark', Uint8Array.of(0xfe, 0xff, ...wide(false)), 'utf-16be'],
    ['UTF-16 without a mark', wide(true), 'utf-16le'],
    ['Latin-1', Uint8Array.from([...text].map((letter) => letter.charCodeAt(0))), 'windows-1252'],
  ])('%s is told', (_name, bytes, encoding) => {
    expect(decodeText(bytes)).toMatchObject({ text, encoding });
  });
});

describe('what a cue says', () => {
  it.each([
    ['<v Runa>180&nbsp;kcal &amp; <i>done</i>', '180 kcal & done'],
    ['<00:00:01.000><c.loud>one</c> <00:00:01.500>two', 'one two'],
    ['2 < 3 and 5 > 4', '2 < 3 and 5 > 4'],
    ['&lt;640&gt; &#49;2 &bogus;', '<640> 12 &bogus;'],
    ['{\\an8}top', 'top'],
    [
      '\u202B640 \u05e7\u05dc\u05d5\u05e8\u05d9\u05d5\u05ea\u202C',
      '640 \u05e7\u05dc\u05d5\u05e8\u05d9\u05d5\u05ea',
    ],
  ])('%s: %s', (text, words) => {
    expect(captionWords(text)).toBe(words);
  });
});
