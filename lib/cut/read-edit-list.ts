import { failed, type Result } from '#lib/result';
import type { EditList } from '#lib/cut/edit-list';
import { readEdl } from '#lib/cut/read-edl';
import { readOtio } from '#lib/cut/read-otio';
import type { FrameRate } from '#lib/cut/timecode';

/** Characters of an edit list that are read at most. */
export const MOST_LIST = 4_000_000;

export interface ReadEditList {
  readonly format: 'edl' | 'otio';
  readonly list: EditList;
}

/**
 * An edit list in the form CMX 3600 or as OpenTimelineIO JSON, told apart by how it begins: JSON begins with a brace.
 * @param rate frames a second of the edit; a list in the form CMX 3600 does not say
 * @example readEditList('TITLE: HARBOR DAY …', frameRate('25')).value.format // 'edl'
 */
export function readEditList(text: string, rate: FrameRate): Result<ReadEditList> {
  if (text.length > MOST_LIST) {
    const message = 'This is longer than 4 million characters: give the list of one episode.';
    return failed({ path: 'list', code: 'too-long', message });
  }
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.trim() === '') {
    return failed({
      path: 'list',
      code: 'empty',
      message: 'Paste an edit list, or choose its file.',
    });
  }
  const format = /^\s*[[{]/.test(clean) ? 'otio' : 'edl';
  const read = format === 'otio' ? readOtio(clean, rate) : readEdl(clean, rate);
  return read.ok ? { ok: true, value: { format, list: read.value } } : read;
}
