import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { cardFiles } from '#lib/publish/cards/card-files';
import { cardPlaces } from '#lib/publish/cards/card-places';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { numbersToPublish } from '#lib/publish/from-lock';
import { CardsView } from '../../app/episodes/[id]/cards/_components/cards-view';
import { COLOURS, readLook, withLook } from '../../app/episodes/[id]/cards/look';
import { incompleteEpisode } from '../support/incomplete-episode';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));

function markup(file: EpisodeFile, snapshot: string | null = null, asked: unknown = {}): string {
  const source = numbersToPublish(file, snapshot);
  const look = readLook(asked);
  const files = cardFiles(cardsOf(source), { ...look, colours: COLOURS });
  const places = cardPlaces(files, source.file.episode);
  return renderToStaticMarkup(<CardsView cards={{ source, look, files, places }} />);
}

const demo = demoFile();

describe('the page of the cards', () => {
  test('has every card with its words, place and files, dish by dish', () => {
    const page = markup(demo);
    const text = words(page);
    expect(text).toContain(
      'Not locked: a draft with the numbers of now. Each card says “not locked”.',
    );
    expect(text).toContain('00:00:45:00 to 00:00:50:00');
    expect(text).toContain('no place yet: nobody has said at which frame the step is seen');
    expect(page).toMatch(/alt="numbers: the whole dish; Barley skillet; 1409 kcal · 68 g protein/);
    const images = page.match(/<img /g) ?? [];
    expect(page.match(/>PNG</g)).toHaveLength(images.length);
    expect(page.match(/>SVG</g)).toHaveLength(images.length);
    expect(page).toContain('/cards/cards.zip?size=1920x1080&amp;ground=plate&amp;over=dark');
  });

  test('says which choice is made, and takes none of what it does not know', () => {
    const page = markup(demo, null, { size: '1080x1920', ground: 'gold', over: ['a', 'b'] });
    expect(page).toMatch(/aria-current="true"[^>]*>1080 × 1920, upright/);
    expect(page).toMatch(/aria-current="true"[^>]*>a plate/);
    expect(withLook('/x', readLook(null))).toBe('/x?size=1920x1080&ground=plate&over=dark');
  });

  test('locked, it says since when', () => {
    const text = words(markup(demo, takeLock(demo).snapshot));
    expect(text).toContain('Numbers locked');
    expect(text).not.toContain('not locked');
  });

  test('open numbers lead to their cause in one press', () => {
    const page = markup(incompleteEpisode());
    expect(words(page)).toContain('Open stew : open: no food chosen for a mystery herb');
    expect(page).toContain('#row-open"');
  });

  test('without a dish it says what to do first', () => {
    const none = { ...demo, episode: { ...demo.episode, segments: [] } };
    expect(words(markup(none))).toContain('No cards yet');
  });
});
