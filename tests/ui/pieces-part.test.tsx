import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { Piece } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { lockDifference } from '#lib/lock/lock-difference';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { numbersToPublish } from '#lib/publish/from-lock';
import { pieceRows } from '#lib/publish/piece-rows';
import { structuredData } from '#lib/publish/structured/structured-data';
import { printCount } from '#lib/units/print';
import { PiecesPart } from '../../app/episodes/[id]/publish/_components/pieces-part';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));
vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

const demo = demoFile();

function withPieces(more: Partial<Piece>, file: EpisodeFile = demo): EpisodeFile {
  const piece: Piece = {
    ...{ id: 'p', kind: 'clip', title: 'Loaf in a minute', segmentIds: ['seg-loaf'], limit: 5000 },
    ...more,
  };
  return { ...file, publish: { variants: [], replies: [], pieces: [piece] } };
}

function part(file: EpisodeFile, snapshot: string | null = null): string {
  const figures = episodeFigures(file);
  const publish = numbersToPublish(file, snapshot, figures);
  const page = {
    ...{ file, figures, revs: {}, description: description(file), numbers: publish.numbers },
    lock: snapshot === null ? null : lockOf(file, snapshot, publish.changed?.reason ?? null),
    ...{ ofLock: publish.ofLock, changed: publish.changed?.dishes ?? [], layout: DEFAULT_LAYOUT },
    ...{
      inputsSha256: inputsHash(file),
      said: [],
      promises: [],
      structured: structuredData(publish),
    },
    ...{ pieces: pieceRows(publish, file), putRight: null, copied: [], last: null },
  };
  return renderToStaticMarkup(<PiecesPart page={page} />);
}

const lockOf = (file: EpisodeFile, snapshot: string, broken: string | null) => ({
  ...{ at: 'Sat 12 Dec, 18:02', seq: 1, sha256: 'ab'.repeat(32), broken },
  difference: lockDifference(snapshot, file, episodeFigures(file)),
});

/** The same, with the foods that no other dish has without a value. */
function withoutValues(file: EpisodeFile, segmentId: string): EpisodeFile {
  const other = structuredClone(file);
  const foodsOf = (isIn: (id: string) => boolean) =>
    other.episode.segments
      .filter(({ id }) => isIn(id))
      .flatMap(({ recipe }) => recipe?.lines.map(({ foodId }) => foodId) ?? []);
  const shared = foodsOf((id) => id !== segmentId);
  const own = foodsOf((id) => id === segmentId).filter((id) => !shared.includes(id));
  for (const food of other.foods) {
    if (own.includes(food.id)) food.version = { ...food.version, values: {} };
  }
  return other;
}

const pre = (markup: string) => words(/<pre[^>]*>.*?<\/pre>/s.exec(markup)?.[0] ?? '');

// What a piece must say is our own; no source outside.
describe('the pieces of an episode', () => {
  test('show the text as it is pasted, with its length against the limit, as a draft', () => {
    const file = withPieces({});
    const [row] = pieceRows(numbersToPublish(file, null), file);
    const markup = part(file);
    const text = words(markup);
    expect(pre(markup)).toBe(row?.made.text.replace(/\s+/g, ' ').trim());
    expect(text).toContain('Clip of Tray-baked turkey meatloaf Not locked');
    expect(text).toContain('Not locked: a draft');
    expect(text).toContain(`${printCount(row?.made.length.codePoints ?? 0)} of 5,000 characters`);
  });

  test('say what was left out, and what is too long all the same', () => {
    expect(words(part(withPieces({ limit: 1000 })))).toContain(
      'Left out for its length: ingredients.',
    );
    const least = words(part(withPieces({ limit: 20 })));
    expect(least).toContain('Longer than its limit: ');
    expect(least).toContain('What is left must be in it: numbers, allergens, cautions');
  });

  test('have the lock of their episode, and say which dish broke it', () => {
    const { snapshot } = takeLock(demo);
    expect(words(part(withPieces({}), snapshot))).toContain(
      'Numbers locked Sat 12 Dec, 18:02, nothing under them has changed.',
    );
    const other = withoutValues(demo, 'seg-loaf');
    const own = part(withPieces({}, other), snapshot);
    expect(words(own)).toMatch(
      /Lock of Sat 12 Dec, 18:02 broken: Tray-baked turkey meatloaf: 1362 → /,
    );
    expect(pre(own)).toBe(pre(part(withPieces({}))));
    const elsewhere = part(withPieces({}, withoutValues(demo, 'seg-skillet')), snapshot);
    expect(words(elsewhere)).toContain('No dish of this piece has changed.');
  });

  test('that came after the lock are told apart from those whose dishes are gone', () => {
    const foods = [aFood('oats', { energyKcal: '370', protein: '13' })];
    const bowl = (id: string) =>
      aDish(id, aRecipe(`r-${id}`, [grams(`l-${id}`, 'oats', 80)]), { title: `Bowl ${id}` });
    const one = aFile([bowl('one')], foods);
    const two = aFile([bowl('one'), bowl('two')], foods);
    const { snapshot } = takeLock(one);
    const later = part(withPieces({ segmentIds: ['two'] }, two), snapshot);
    expect(words(later)).toContain('Not in the lock, and so not in the text: Bowl two.');
    expect(later).toContain('href="#numbers-lock"');
    expect(later).not.toContain('<pre');
    const half = part(withPieces({ segmentIds: ['one', 'two'] }, two), snapshot);
    expect(words(half)).toContain('not in the text: Bowl two.');
    // 80 g at 370 kcal per 100 g.
    expect(pre(half)).toContain('296 kcal');
    const goneWords = 'Clip of no dish Its dishes were taken out of the episode';
    for (const file of [withPieces({ segmentIds: [] }), withPieces({ segmentIds: ['two'] }, one)]) {
      const gone = part(file);
      expect(words(gone)).toContain(goneWords);
      expect(gone).not.toContain('<pre');
    }
  });

  test('of the day are ticked so in their form', () => {
    const markup = part(withPieces({ segmentIds: null, kind: 'text', title: 'The day' }));
    expect(words(markup)).toContain('Text of the day');
    const box = /<input id="piece-form-p-day"[^>]*>/.exec(markup)?.[0] ?? '';
    expect(box).toContain('checked');
  });
});
