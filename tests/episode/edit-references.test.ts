import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeData, parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { EDIT } from '../store/edit-fixture';
import { FILE } from '../store/fixture';

const whole = (): EpisodeFile => structuredClone({ ...FILE, edit: EDIT });

/** The faults of a file with one place changed, as a person's slip would. */
function faults(change: (edit: NonNullable<EpisodeFile['edit']>) => void): readonly string[] {
  const file = whole();
  if (!file.edit) throw new Error('the file has an edit');
  change(file.edit);
  const read = parseEpisodeData(file);
  return read.ok ? [] : read.problems.map(({ path, message }) => `${path}: ${message}`);
}

const renamed = <T extends { readonly id: string }>(row: T): T => ({ ...row, id: 'again' });

describe('the edit of a file', () => {
  it('is read back as it was written, and stands in no file without one', () => {
    expect(parseEpisodeFile(episodeFileText(whole()))).toEqual({ ok: true, value: whole() });
    expect(episodeFileText(FILE)).not.toContain('"edit"');
  });

  it('says numbers only of segments and portions that the file has', () => {
    const about = { kind: 'about' as const, scope: 'portion' as const };
    const put = (segmentId: string | null, portionId: string | null) =>
      faults(({ mends }) => {
        Object.assign(mends[2] ?? {}, { mend: { ...about, segmentId, portionId } });
      });
    expect(put('s-gone', null)).toEqual([
      'edit.mends[2].mend.segmentId: no segment has the id "s-gone"',
    ]);
    expect(put('s-skillet', 'p-gone')).toEqual([
      'edit.mends[2].mend.portionId: no portion of that segment has the id "p-gone"',
    ]);
    expect(put('s-intro', 'p-1')).toEqual([
      'edit.mends[2].mend.portionId: no portion of that segment has the id "p-1"',
    ]);
    expect(put(null, 'p-1')).toEqual([
      'edit.mends[2].mend.portionId: no portion of that segment has the id "p-1"',
    ]);
    expect(put('s-skillet', 'p-2')).toEqual([]);
  });

  it('has each text, each reading of the same words and each answer once', () => {
    expect(faults(({ texts }) => texts.push(...EDIT.texts.slice(0, 1)))).toEqual([
      'edit.texts[5]: the id is given twice',
    ]);
    expect(faults(({ mends }) => mends.push(...EDIT.mends.slice(0, 1).map(renamed)))).toEqual([
      `edit.mends[${EDIT.mends.length}]: the same words between the same words are put right once`,
    ]);
    expect(faults(({ named }) => named.push(...EDIT.named.slice(0, 1).map(renamed)))).toEqual([
      'edit.named[2]: of each food there is one answer',
    ]);
  });
});
