import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { captionWords } from '#lib/cut/caption-words';
import { captionsAs } from '#lib/cut/captions-as';
import { cuesOf, type Captions } from '#lib/cut/captions';
import { readSubRip } from '#lib/cut/read-subrip';
import { readWebVtt } from '#lib/cut/read-webvtt';

const said = (captions: Captions) =>
  cuesOf(captions).map(({ startMs, endMs, text }) => [startMs, endMs, captionWords(text)]);

describe('captions in the other format', () => {
  it('keep bold, italic and underlined, and say what has no place there', () => {
    const captions = readWebVtt(
      [
        'WEBVTT - harbor',
        '',
        'STYLE',
        '::cue { color: lime }',
        '',
        'NOTE weighed twice',
        '',
        '00:01.000 --> 00:02.500 line:0',
        '<v Runa>180&nbsp;kcal &amp; <i>done</i>',
      ].join('\n'),
    );
    const { text, left } = captionsAs(captions, 'subrip');
    expect(text).toBe('1\r\n00:00:01,000 --> 00:00:02,500\r\n180\u00A0kcal & <i>done</i>\r\n');
    expect(left).toEqual([
      '1 place on the picture',
      '1 cue with voices, colours or other tags',
      '1 style or region',
      '1 note',
      '1 header',
    ]);
  });

  it('write what WebVTT would take for a tag or a reference as words (W3C WebVTT 4.2.2)', () => {
    const captions = readSubRip(
      '1\n00:00:01,000 --> 00:00:02,000 X1:10 X2:20\n{\\an8}salt & 2 < 3 <font color="red">hot</font>\n',
    );
    const { text, left } = captionsAs(captions, 'webvtt');
    expect(text).toBe('WEBVTT\n\n1\n00:01.000 --> 00:02.000\nsalt &amp; 2 &lt; 3 hot\n');
    expect(left).toEqual(['1 place on the picture', '1 cue with voices, colours or other tags']);
  });

  it('are as they were in their own format', () => {
    const text = 'WEBVTT\n\nNOTE a\n\n00:01.000 --> 00:02.000 line:0\n<v A>one</v>\n';
    expect(captionsAs(readWebVtt(text), 'webvtt')).toEqual({ text, left: [] });
  });

  // Words, tags, references and what only looks like them.
  const piece = fc.constantFrom(
    'one',
    '640',
    ' & ',
    '&amp;',
    '&lt;b&gt;',
    '&amp;lt;',
    '<i>',
    '</i>',
    '<v Runa>',
    '<c.a>',
    '</c>',
    '<00:01.500>',
    ' < ',
    '>',
    '{\\an8}',
    'é',
    '\n',
    ' ',
    '&#49;',
    '-->',
  );
  const words = fc.array(piece, { minLength: 1, maxLength: 8 }).map((parts) =>
    parts
      .join('')
      .replace(/\n{2,}/g, '\n')
      .replace(/^\n|\n$/g, ''),
  );
  const fileOf = (format: Captions['format']) =>
    fc
      .array(fc.tuple(fc.nat({ max: 1e6 }), fc.integer({ min: 1, max: 9999 }), words), {
        maxLength: 6,
      })
      .map((cues): Captions => ({
        format,
        head: '',
        remarks: [],
        blocks: cues.map(([startMs, lasts, text]) => ({
          kind: 'cue',
          name: '',
          startMs,
          endMs: startMs + lasts,
          settings: '',
          // An arrow cannot stand in either file as words.
          text: text.replaceAll('-->', '->'),
          line: 1,
        })),
      }));

  it('say the same words at the same times, from WebVTT to SubRip', () => {
    fc.assert(
      fc.property(fileOf('webvtt'), (captions) => {
        const { text } = captionsAs(captions, 'subrip');
        expect(said(readSubRip(text))).toEqual(said(captions));
      }),
    );
  });

  it('say the same words at the same times, from SubRip to WebVTT', () => {
    fc.assert(
      fc.property(fileOf('subrip'), (captions) => {
        const { text } = captionsAs(captions, 'webvtt');
        expect(said(readWebVtt(text))).toEqual(said(captions));
      }),
    );
  });
});
