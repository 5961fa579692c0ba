import { describe, expect, test, vi } from 'vitest';
import * as cards from '../../app/episodes/[id]/cards/read-cards';
import { GET } from '../../app/episodes/[id]/cards/cards.zip/route';
import { followZip, type ZipProgress } from '../../app/episodes/[id]/cards/zip-progress';
import { NO_ANSWER, zipWords } from '../../app/episodes/[id]/cards/zip-words';

vi.mock('../../app/episodes/[id]/cards/read-cards', { spy: true });

const context = { params: Promise.resolve({ id: 'none' }) };
const asked = (job: string) => new Request(`http://127.0.0.1/cards.zip?job=${job}`);

/** All that is told of a zip from now on. */
function followed(job: string): readonly ZipProgress[] {
  const told: ZipProgress[] = [];
  followZip(job, (progress) => told.push(progress));
  return told;
}

// What a person must be told is our own; no source outside.
describe('a zip of cards', () => {
  test.each([
    [{ drawn: 0, of: 0, over: false }, 'Drawing the cards …', false],
    [{ drawn: 3, of: 20, over: false }, '3 of 20 cards drawn', false],
    [{ drawn: 20, of: 20, over: true }, 'All 20 cards are drawn.', false],
    [{ drawn: 0, of: 0, over: true }, 'The zip could not be made. Start it again', true],
    [
      { drawn: 3, of: 20, over: true },
      'The download ended after 3 of 20 cards: what was saved is not whole. Start it again',
      true,
    ],
  ])('%j is told so that the person knows whether to begin again', (progress, words, failed) => {
    const told = zipWords(progress);
    expect(told.words).toContain(words);
    expect(told.failed).toBe(failed);
    expect(NO_ANSWER.failed).toBe(true);
  });

  test('of no episode is over, and the page that waits for it is told', async () => {
    vi.mocked(cards.readCards).mockResolvedValueOnce(null);
    const told = followed('job-of-none');
    expect((await GET(asked('job-of-none'), context)).status).toBe(404);
    expect(told.at(-1)).toEqual({ drawn: 0, of: 0, over: true });
  });

  test('that cannot be read is over, and the page that waits for it is told', async () => {
    vi.mocked(cards.readCards).mockRejectedValueOnce(new Error('no database'));
    const told = followed('job-of-fault');
    await expect(GET(asked('job-of-fault'), context)).rejects.toThrow('no database');
    expect(told.at(-1)).toEqual({ drawn: 0, of: 0, over: true });
  });
});
