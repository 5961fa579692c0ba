import { cuesOf, type Captions, type Cue } from '#lib/cut/captions';
import { spelledOut, TAGS } from '#lib/cut/caption-words';
import { writeSubRip, writeWebVtt } from '#lib/cut/write-captions';

/** Captions written in a format, and what that format has no place for, in words. */
export interface WrittenCaptions {
  readonly text: string;
  readonly left: readonly string[];
}

/**
 * Captions in a format that need not be their own. Times, words, lines and the styles both know (bold, italic,
 * underlined) stay; what the other format has no place for is left out and told.
 *
 * Law: read again, each cue says the same words at the same times.
 *
 * @example captionsAs(readSubRip(text), 'webvtt').text // 'WEBVTT\n\n1\n00:01.000 --> …'
 */
export function captionsAs(captions: Captions, format: Captions['format']): WrittenCaptions {
  const write = format === 'webvtt' ? writeWebVtt : writeSubRip;
  if (captions.format === format) return { text: write(captions), left: [] };
  const cues = cuesOf(captions);
  const turned = format === 'webvtt' ? toWebVtt : toSubRip;
  const blocks = cues.map((cue) => ({ ...cue, settings: '', text: turned(cue.text) }));
  const { blocks: all, head } = captions;
  const count = (kind: string) => all.filter((block) => block.kind === kind).length;
  const left = [
    told(
      cues.filter(({ settings }) => settings !== '').length,
      'place on the picture',
      'places on the picture',
    ),
    told(
      cues.filter(hasOtherTags).length,
      'cue with voices, colours or other tags',
      'cues with voices, colours or other tags',
    ),
    told(count('style') + count('region'), 'style or region', 'styles and regions'),
    told(count('note'), 'note', 'notes'),
    told(format === 'subrip' && head !== '' ? 1 : 0, 'header', 'headers'),
  ].filter((words) => words !== '');
  return { text: write({ ...captions, format, head: '', blocks }), left };
}

const told = (count: number, one: string, more: string): string =>
  count === 0 ? '' : `${count} ${count === 1 ? one : more}`;

/** Tags that WebVTT (W3C WebVTT, 4.2.2) and SubRip (from memory) both know. */
const SHARED = /<(\/?)([biu])>/gi;

const hasOtherTags = ({ text }: Cue): boolean => text.replace(SHARED, '').search(TAGS) >= 0;

/** The words of a stretch without tags, with shared ones kept, each stretch between them written by `say`. */
function withShared(text: string, say: (words: string) => string): string {
  const parts = text.split(/(<\/?[biu]>)/gi);
  return parts.map((part, index) => (index % 2 === 1 ? part.toLowerCase() : say(part))).join('');
}

/** A line of SubRip has no references: what looks like one, or like a tag, is words in WebVTT only if it is written so. */
function toWebVtt(text: string): string {
  return withShared(text, (part) =>
    part
      .replace(TAGS, '')
      .replace(/&(?!(?:amp|lt|gt|nbsp|lrm|rlm|quot|apos|#\d{1,7}|#x[0-9a-f]{1,6});)/gi, '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;'),
  );
}

/** Words that SubRip would take for a tag or a reference stay written as references. */
function toSubRip(text: string): string {
  return withShared(text, (part) =>
    spelledOut(part)
      .replace(/&(?=(?:amp|lt|gt|nbsp|lrm|rlm|quot|apos|#\d{1,7}|#x[0-9a-f]{1,6});)/gi, '&amp;')
      .replace(/<(?=[/a-z\d])/gi, '&lt;'),
  );
}
