import { describe, expect, it, vi } from 'vitest';
import { cardFileNamed, cardFiles, type FilesLook } from '#lib/publish/cards/card-files';
import * as drawing from '#lib/publish/cards/draw-card';
import { CUT_SIZES } from '#lib/publish/cards/frame';
import { COLOURS, draftCards } from './support';

vi.mock('#lib/publish/cards/draw-card', { spy: true });

/** Those of the demo, with lists that take more than one picture. */
const cards = draftCards().map((card) =>
  card.kind === 'ingredients' ? { ...card, rows: Array(4).fill(card.rows).flat() } : card,
);
const looks = CUT_SIZES.map((size): FilesLook => ({ size, ground: 'plate', colours: COLOURS }));

// No source outside: what one picture must be is what all of them have under its name.
describe('one picture by its name', () => {
  it.each(looks)('is the one that all have under that name, at $size', (look) => {
    const all = cardFiles(cards, look);
    expect(all.some(({ of }) => of > 1)).toBe(true);
    for (const file of all) expect(cardFileNamed(cards, file.name, look)).toEqual(file);
  });

  it('is found without laying out any other', () => {
    const [look] = looks;
    if (!look) throw new Error('there is a size');
    const names = cardFiles(cards, look).map(({ name }) => name);
    vi.mocked(drawing.drawCard).mockClear();
    cardFileNamed(cards, names.at(-1) ?? '', look);
    expect(drawing.drawCard).toHaveBeenCalledTimes(1);
  });

  it.each(['', 'x', '00-none-1920x1080', '99-none-1920x1080', '01-none-1920x1080'])(
    'that none has is none: %j',
    (name) => {
      for (const look of looks) expect(cardFileNamed(cards, name, look)).toBeNull();
    },
  );
});
