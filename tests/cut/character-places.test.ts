import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { captionWords } from '#lib/cut/caption-words';
import { characterPlaces } from '#lib/cut/character-places';

const said = (text: string) =>
  characterPlaces(text)
    .map((line) => line.map(({ char }) => char).join(''))
    .join('\n');
const words = (text: string) =>
  captionWords(text)
    .split('\n')
    .filter((line) => line !== '')
    .join('\n');

describe('the places of what a cue says', () => {
  it('knows tags, references and blanks', () => {
    expect(characterPlaces('<b>6</b>4&amp;')).toEqual([
      [
        { char: '6', from: 3, to: 4 },
        { char: '4', from: 8, to: 9 },
        { char: '&', from: 9, to: 14 },
      ],
    ]);
    expect(said('<v Runa> 180&nbsp;\t kcal <00:01.000>now\n\n{\\an8}end ')).toBe(
      '180 kcal now\nend',
    );
  });

  it('says the words of the cue, whatever stands in it', () => {
    const piece = fc.constantFrom(
      ...'a,6, ,\n,<b>,</b>,<,>,&amp;,&lt;,&#128512;,&#x41;,&nope;,&,{\\an8},{,},\u200E,\u00A0,😀,\t,<v Runa>'.split(
        /,(?=.)/s,
      ),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join('');
        expect(said(text)).toBe(words(text));
      }),
      { numRuns: 1000 },
    );
  });

  it('places lie in order within the text', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(0xffff)).map((units) => String.fromCharCode(...units)),
        (text) => {
          let before = 0;
          for (const { from, to } of characterPlaces(text).flat()) {
            expect(from).toBeGreaterThanOrEqual(Math.min(before, from));
            expect(to).toBeGreaterThan(from);
            expect(to).toBeLessThanOrEqual(text.length);
            before = from;
          }
        },
      ),
    );
  });
});
