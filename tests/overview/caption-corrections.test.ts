import { describe, expect, it } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { acceptedInto, correctableCaptions } from '#lib/overview/caption-corrections';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const SRT = [
  '1',
  '00:00:01,000 --> 00:00:03,000',
  'The whole tray is 640 calories.',
  '',
  '2',
  '00:00:04,000 --> 00:00:06,000',
  'With 40 grams of protein in all of it.',
  '',
].join('\r\n');

// 400 g are 600 kcal and 40 g of protein: only the first number is off.
const base = aFile(
  [aDish('tray', aRecipe('r', [grams('400 g oats', 'oats', 400)]), { title: 'Oat tray' })],
  [aFood('oats', { energyKcal: '150', protein: '10.0', fat: '4.0', carbohydrate: '18.0' })],
);
const text = (id: string, of: string) => ({ id, kind: 'captions' as const, name: id, text: of });
const file = {
  ...base,
  edit: { texts: [text('srt', SRT), text('words', 'It is 640 calories.')], mends: [], named: [] },
};
const [captions, ...more] = correctableCaptions(file, NO_FACTS);
if (!captions) throw new Error('captions');

describe('captions that may be corrected', () => {
  it('are those with times, with the numbers that are off', () => {
    expect(more).toEqual([]);
    expect(captions.format).toBe('subrip');
    expect(captions.corrections).toHaveLength(1);
    expect(captions.corrections[0]).toMatchObject({ place: '0:01', said: '640 calories' });
    expect(captions.corrections[0]?.right).toContain('600');
  });

  it('are the same to the byte unless a correction was accepted', () => {
    expect(acceptedInto(captions, () => false, 'subrip')).toEqual({ text: SRT, left: [] });
    const right = captions.corrections[0]?.right ?? '';
    const { text: corrected } = acceptedInto(captions, () => true, 'subrip');
    expect(corrected).toBe(SRT.replace('640 calories', right));
  });

  it('come in the other format too, with the same times', () => {
    const { text: vtt } = acceptedInto(captions, () => true, 'webvtt');
    expect(vtt).toMatch(/^WEBVTT\n\n1\n00:01\.000 --> 00:03\.000\nThe whole tray is .*600/);
  });

  it('keep the food that an amount is of', () => {
    const spoken = SRT.replace(
      'With 40 grams of protein in all of it.',
      'First, 300 grams of oats.',
    );
    const edit = { texts: [text('amount', spoken)], mends: [], named: [] };
    const [amounts] = correctableCaptions({ ...base, edit }, NO_FACTS);
    const oats = amounts?.corrections.find(({ said }) => said.includes('300'));
    expect(oats?.said).toBe('300 grams');
    const { text: corrected } = amounts
      ? acceptedInto(amounts, (key) => key === oats?.key, 'subrip')
      : { text: '' };
    expect(corrected).toMatch(/^First, .*400.* of oats\.\r$/m);
  });
});
