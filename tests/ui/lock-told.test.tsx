import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers } from '#lib/figures/published-numbers';
import { lockDifference } from '#lib/lock/lock-difference';
import { inputsHash, takeLock } from '#lib/lock/numbers-lock';
import type { SaidStanding } from '#lib/overview/said-standing';
import { cardFiles } from '#lib/publish/cards/card-files';
import { cardPlaces } from '#lib/publish/cards/card-places';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { descriptionOf } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { evidence } from '#lib/publish/evidence';
import { numbersToPublish } from '#lib/publish/from-lock';
import { toldLock } from '#lib/publish/lock-words';
import { structuredData } from '#lib/publish/structured/structured-data';
import { CardsView } from '../../app/episodes/[id]/cards/_components/cards-view';
import { COLOURS, readLook } from '../../app/episodes/[id]/cards/look';
import { EvidenceView } from '../../app/episodes/[id]/evidence/_components/evidence-view';
import { NumbersView } from '../../app/episodes/[id]/numbers/_components/numbers-view';
import { PublishView } from '../../app/episodes/[id]/publish/_components/publish-view';
import type { PublishPage } from '../../app/episodes/[id]/publish/_components/view';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));
vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

/** A day of one dish of which every number is known and that says all that chapters ask for. */
function bowl(oats: number): EpisodeFile {
  const file = aFile(
    ['a', 'b', 'c'].map((id, at) =>
      aDish(id, aRecipe(`r${id}`, [grams(`l${id}`, 'oats', oats)]), {
        ...{ title: `Bowl ${id}`, inFrame: at * 2500, outFrame: (at + 1) * 2500 },
      }),
    ),
    [aFood('oats', { energyKcal: '370', protein: '13', fat: '7', carbohydrate: '63.75' })],
  );
  return { ...file, episode: { ...file.episode, anythingElse: { kind: 'nothing' } } };
}

const base = bowl(80);
const { snapshot } = takeLock(base);
const heavier = bowl(90);
const AT = 'Sat 12 Dec, 18:02';

function publishPage(
  file: EpisodeFile,
  kept: string | null,
  more: Partial<PublishPage> = {},
): string {
  const figures = episodeFigures(file);
  const publish = numbersToPublish(file, kept, figures);
  const broken = publish.changed?.reason ?? null;
  const page: PublishPage = {
    ...{ file, figures, numbers: publish.numbers, description: descriptionOf(publish), revs: {} },
    lock:
      kept === null
        ? null
        : {
            ...{ at: AT, seq: 1, sha256: 'ab'.repeat(32), broken },
            difference: lockDifference(kept, file, figures),
          },
    ...{ ofLock: publish.ofLock, changed: publish.changed?.dishes ?? [], layout: DEFAULT_LAYOUT },
    ...{
      inputsSha256: inputsHash(file),
      said: [],
      promises: [],
      structured: structuredData(publish),
    },
    ...{ pieces: [], putRight: null, copied: [], last: null },
    ...more,
  };
  return renderToStaticMarkup(<PublishView page={page} />);
}

function numbersPage(file: EpisodeFile, kept: string | null): string {
  const figures = episodeFigures(file);
  const publish = numbersToPublish(file, kept, figures);
  const numbers = publishedNumbers(file, figures);
  return renderToStaticMarkup(
    <NumbersView
      view={{ file, figures, numbers, revs: {}, others: {}, editing: null }}
      description={descriptionOf(publish)}
      lock={toldLock(publish)}
    />,
  );
}

function cardsPage(file: EpisodeFile, kept: string | null): string {
  const source = numbersToPublish(file, kept);
  const look = readLook({});
  const files = cardFiles(cardsOf(source), { ...look, colours: COLOURS });
  const places = cardPlaces(files, source.file.episode);
  return renderToStaticMarkup(<CardsView cards={{ source, look, files, places }} />);
}

function evidencePage(file: EpisodeFile, kept: string | null): string {
  const at = '2026-12-13T10:00:00.000Z';
  const { schemaVersion, engineVersion } = takeLock(base);
  const lock =
    kept === null
      ? null
      : {
          ...{
            seq: 1,
            at,
            sha256: 'ab'.repeat(32),
            inputsSha256: null,
            schemaVersion,
            engineVersion,
          },
          snapshot: kept,
        };
  const made = evidence(file, { lock, facts: NO_FACTS, at });
  return renderToStaticMarkup(<EvidenceView episodeId="e" evidence={made} zone="UTC" />);
}

const PAGES = [
  ['the numbers', numbersPage],
  ['the cards', cardsPage],
  ['the evidence', evidencePage],
] as const;

// How a lock must be told is our own; no source outside.
describe.each(PAGES)('the page of %s', (_name, page) => {
  test('tells how its numbers stand to the lock, and leads to it', () => {
    expect(words(page(base, null))).toContain('Not locked: a draft with the numbers of now.');
    expect(words(page(base, snapshot))).toMatch(
      /Numbers locked .+, nothing under them has changed\./,
    );
    expect(words(page(heavier, snapshot))).toMatch(/Lock of .+ broken/);
    for (const each of [page(base, null), page(base, snapshot), page(heavier, snapshot)]) {
      expect(each).toMatch(/href="\/episodes\/[^/"]+\/publish#numbers-lock"/);
    }
  });

  test('has no numbers told as locked where the lock cannot be read', () => {
    const text = words(page(base, '{'));
    expect(text).toContain('The numbers are those of now, not locked.');
    expect(text).not.toMatch(/Numbers locked|those of the lock|what was locked/);
  });
});

describe('the page of the numbers', () => {
  test('under a broken lock has the numbers of now, and the text those of the lock', () => {
    const text = words(numbersPage(heavier, snapshot));
    expect(text).toContain('The numbers are those of now, not locked.');
    expect(text).toContain('The numbers stay those of the lock.');
  });
});

describe('the publish page', () => {
  const CLEAR = 'Nothing is open: every number is known.';

  test('says that nothing is open while nothing is', () => {
    expect(words(publishPage(base, null))).toContain(CLEAR);
    expect(words(publishPage(base, snapshot))).toContain(CLEAR);
  });

  const said: SaidStanding = {
    ...{ id: 's', segmentId: 'a', about: 'Bowl a', text: 'Two hundred calories', on: '12 Dec' },
    ...{ change: null, clashes: true },
  };
  const long = { ...descriptionOf(numbersToPublish(base, null)), fits: false };
  test.each([
    ['the lock is broken', heavier, snapshot, {}],
    ['the lock cannot be read', base, '{', {}],
    [
      'numbers are to be put right',
      base,
      snapshot,
      { putRight: { numbers: 1, seq: 1, isCopied: true, isPublic: true } },
    ],
    ['what was said does not add up', base, snapshot, { said: [said] }],
    ['the text is too long', base, null, { description: long }],
  ])('does not say so where %s', (_case, file, kept, more) => {
    expect(words(publishPage(file, kept, more))).not.toContain(CLEAR);
  });

  test('has a lock that a link’s reader is put at', () => {
    expect(publishPage(base, null)).toMatch(/<h2 id="numbers-lock" tabindex="-1"/i);
  });

  test('leads from chapters that are missing to the times in the cut', () => {
    const segments = base.episode.segments.map((each) => ({ ...each, inFrame: null }));
    const markup = publishPage({ ...base, episode: { ...base.episode, segments } }, null);
    const way = /No chapters yet.*?<\/section>/s.exec(markup)?.[0] ?? '';
    expect(way).toMatch(/href="\/episodes\/[^/"]+\/edit\/timeline"/);
  });

  test('has captions, chapters and cards together under what goes up with the video', () => {
    const markup = publishPage(base, null);
    const part = /id="with-the-video".*?<\/section>/s.exec(markup)?.[0] ?? '';
    for (const path of ['publish/captions', 'edit/timeline', 'cards']) {
      expect(part).toContain(`/${path}"`);
    }
    expect(markup.match(/publish\/captions"/g)).toHaveLength(1);
  });
});
