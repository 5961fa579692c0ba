import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { editStanding } from '#lib/overview/edit-standing';
import type { SaidRow } from '#lib/overview/said-rows';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { ClaimPart } from '../../app/episodes/[id]/edit/_components/claim-part';
import type { EditPage } from '../../app/episodes/[id]/edit/_components/view';
import { bringInText } from '../../app/episodes/[id]/edit/actions';
import { saveDishClaims } from '../../app/episodes/[id]/edit/claim-actions';
import { withFreshDatabase } from '../store/database';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../support/build';
import { send, words } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({ redirect: vi.fn(), usePathname: () => '/episodes/e/edit' }));
withFreshDatabase();

/** The row of 21 CFR 101.12(b), table 2, whose amount is 140 g without gravy. */
const LOAF_ROW = 'mixed dishes not measured with a cup';

/** 10 g of protein in 100 g of the finished loaf. */
async function begin(region: 'US' | 'EU' = 'US') {
  const recipe = aRecipe('r', [grams('beans', 'bean', 400), grams('salt', 'salt', 0)], {
    weighings: [aReading('w', 'finished', 400)],
  });
  const foods = [
    aFood('bean', { protein: '10.0', energyKcal: '101' }),
    aFood('salt', { protein: '0', energyKcal: '0' }),
  ];
  const dish = aDish('s', recipe, { title: 'Bean meatloaf' });
  const done = await importEpisodeFile(aFile([dish], foods, { episode: { region } }), new Date());
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const { episodeId } = done.value;
  const text = '1\n00:00:10,000 --> 00:00:12,000\nthis bean meatloaf is high protein\n';
  await send(bringInText, { episodeId, kind: 'captions', text });
  return episodeId;
}

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, '2026-12-10T08:00:00.000Z', { edit: true });
  if (!file) throw new Error('no episode');
  const revs = await readRevisions(episodeId);
  const row = editStanding(file, NO_FACTS).rows.find(({ words: said }) => said === 'high protein');
  if (!row) throw new Error('the claim word was not read');
  return { row, revs, claims: file.episode.segments[0]?.claims };
}

async function say(episodeId: string, more: Readonly<Record<string, string>>) {
  const { row, revs } = await read(episodeId);
  const segmentId = row.segmentId ?? '';
  const rev = revs[segmentId] ?? 0;
  const form = { episodeId, segmentId, rev, judgedAs: 'food', amount: '', grams: '' };
  return (await send(saveDishClaims, { ...form, proteinPermille: '', ...more })).state;
}

/** What the opened statement shows of its claim. */
function shown(row: SaidRow): string {
  const full = { ...row, link: null, lacksPrice: false, mendRev: 0 };
  const page = { episodeId: 'e', revs: {} } as unknown as EditPage;
  return renderToStaticMarkup(<ClaimPart page={page} row={full} />);
}

describe('what a dish is judged by', () => {
  // 10 g are 20 % of the Daily Value (21 CFR 101.54(b)(1), 101.9(c)(9)): 14 g × 92 % are more, 14 g × 60 % less.
  test('is said in one act, changes the verdict, and is undone like any other', async () => {
    const episodeId = await begin();
    expect((await read(episodeId)).row.standing).toBe('unknown');
    const state = await say(episodeId, { amount: LOAF_ROW, proteinPermille: '92' });
    expect(state.problems).toEqual([]);
    const said = await read(episodeId);
    expect(said.claims).toEqual({ proteinPermille: 920, raccMg: 140_000, meal: false });
    expect(said.row.standing).toBe('agrees');
    await say(episodeId, { amount: LOAF_ROW, proteinPermille: '60' });
    expect((await read(episodeId)).row.standing).toBe('off');
    const { acts } = await readEpisodeChanges(episodeId, { take: 1 });
    await undo(acts[0]?.groupId ?? '', { actor: 'test', at: new Date() });
    expect((await read(episodeId)).row.standing).toBe('agrees');
  });

  test('is unsaid again where everything is emptied', async () => {
    const episodeId = await begin();
    await say(episodeId, { amount: LOAF_ROW, judgedAs: 'meal' });
    expect((await read(episodeId)).claims).toMatchObject({ meal: true });
    await say(episodeId, {});
    expect((await read(episodeId)).claims).toBeNull();
  });

  test('may be a weight of its own', async () => {
    const episodeId = await begin();
    await say(episodeId, { amount: 'other', grams: '195 g', proteinPermille: '92' });
    const { row, claims } = await read(episodeId);
    expect(claims?.raccMg).toBe(195_000);
    expect(shown(row)).toMatch(/value="195"/);
    expect(row.claim?.rows[0]?.per).toBe('195 g');
  });

  test.each([
    ['grams that are none', { amount: 'other', grams: 'a plate' }, 'Write grams as'],
    ['a range', { amount: 'other', grams: '130-150' }, 'Write one weight'],
    ['no grams for a volume', { amount: 'milk and milk drinks' }, 'Weigh 240 mL of it'],
    ['a row and another weight', { amount: LOAF_ROW, grams: '195' }, '140 g is chosen'],
    ['a row that is none', { amount: 'a handful' }, 'Choose one of the amounts'],
    ['more than all of its protein', { proteinPermille: '920' }, '100 %'],
  ])('with %s is refused in words, and what was typed is kept', async (_, typed, message) => {
    const episodeId = await begin();
    const state = await say(episodeId, typed);
    expect(state.problems.map((each) => each.message).join(' ')).toContain(message);
    expect(state.typed).toMatchObject(typed);
    expect((await read(episodeId)).claims).toBeNull();
  });
});

describe('an opened claim word', () => {
  test('offers the rows its title speaks for with the verdict each gives, and says whom the rules bind', async () => {
    const episodeId = await begin();
    await say(episodeId, { proteinPermille: '92' });
    const { row } = await read(episodeId);
    const told = words(shown(row));
    expect(told).toContain(`agrees: ${LOAF_ROW}, 140 g; 195 g with gravy or sauce on top`);
    expect(told).toContain('a meal or main dish: can’t say');
    expect(told).toContain('is for you and your counsel to say');
    expect(told).toContain('soups, 245 g');
  });

  test('shows each number of its rule: threshold, in what, the figure with its range, the provision', async () => {
    const episodeId = await begin();
    await say(episodeId, { amount: LOAF_ROW, proteinPermille: '92' });
    const table = words(/<table.*<\/table>/s.exec(shown((await read(episodeId)).row))?.[0] ?? '');
    expect(table).toContain('What 21 CFR 101.54(b)(1) asks for');
    expect(table).toMatch(/at least 10 g of protein, corrected by PDCAAS 140 g 1[23](\.\d+)? g/);
    expect(table).toContain('agrees');
  });

  // Regulation (EC) No 1924/2006, Annex: 'high protein' is 20 % of the energy, whatever is eaten of it.
  test('asks nothing of the person in the Union', async () => {
    const { row } = await read(await begin('EU'));
    const markup = shown(row);
    expect(markup).not.toContain('<form');
    expect(words(markup)).toContain('at least 20 % from protein its energy');
    expect(row.standing).toBe('agrees');
  });
});
