import { describe, expect, test } from 'vitest';
import { readDraft } from '#lib/draft/read-draft';
import { LAYOUTS } from './layouts';
import { MORE_LAYOUTS } from './more-layouts';
import { sketch } from './sketch';

describe('an episode that is out', () => {
  test.each([...LAYOUTS, ...MORE_LAYOUTS])('$name', (layout) => {
    const read = readDraft(layout);
    expect(read.ok ? sketch(read.value).join('\n') : read.problems).toEqual(layout.comes);
  });

  test('is refused in words where there is nothing to read, or far too much', () => {
    const code = (texts: Parameters<typeof readDraft>[0]) => {
      const read = readDraft(texts);
      return read.ok ? [] : read.problems.map(({ path, code: what }) => `${path} ${what}`);
    };
    expect(code({})).toEqual(['captions empty']);
    expect(code({ captions: ' \n', description: '\t' })).toEqual(['captions empty']);
    // 64 MB, as a film chosen by mistake.
    expect(code({ captions: 'x'.repeat(64_000_000) })).toEqual(['captions too-long']);
    expect(code({ description: 'x'.repeat(64_000_000), title: 'x'.repeat(3000) })).toEqual([
      'description too-long',
      'title too-long',
    ]);
    expect(code({ title: 'Oat jars' })).toEqual([]);
  });

  test('without a list of ingredients a dish has none, whatever else is said of it', () => {
    const read = readDraft({
      title: 'Turkey tray, 640 calories',
      captions: '[0:00] The whole tray is 640 calories and 71 grams of protein.',
    });
    if (!read.ok) throw new Error('refused');
    expect(sketch(read.value)).toEqual([
      'title Turkey tray, 640 calories',
      '- dish Turkey tray, 640 calories',
    ]);
  });
});
