import { printCaptionTime, WEBVTT_TIME } from '#lib/cut/caption-times';
import type { Chapter } from '#lib/cut/chapters';

/** A chapter's end: its own, else the next one's beginning; null for a last one without. */
function endOf(chapters: readonly Chapter[], index: number): number | null {
  return chapters[index + 1]?.startS ?? chapters[index]?.endS ?? null;
}

/**
 * Chapters as a metadata file of FFmpeg (its documentation, "Metadata": `;FFMETADATA1`, a `[CHAPTER]` each, times in
 * thousandths, the signs `= ; # \` and line ends behind a backslash). The last needs an end: `endS` of the cut.
 * @example ffmpegChapters([{ title: 'chapter #1', startS: 0 }], 60) // …START=0\nEND=60000\ntitle=chapter \#1\n
 */
export function ffmpegChapters(chapters: readonly Chapter[], endS: number): string {
  const each = chapters.map((chapter, index) =>
    [
      '[CHAPTER]',
      'TIMEBASE=1/1000',
      `START=${chapter.startS * 1000}`,
      `END=${Math.max(endOf(chapters, index) ?? endS, chapter.startS) * 1000}`,
      `title=${chapter.title.replace(/[=;#\\\n]/g, '\\$&')}`,
    ].join('\n'),
  );
  return `${[';FFMETADATA1', ...each].join('\n')}\n`;
}

/**
 * Chapters as a WebVTT file of chapters (W3C WebVTT, 1.4 and 4.6: consecutive cues that do not overlap, each with its
 * title alone). Those of no length are left out.
 */
export function webVttChapters(chapters: readonly Chapter[], endS: number): string {
  const each = chapters.flatMap(({ title, startS }, index) => {
    const end = endOf(chapters, index) ?? endS;
    if (end <= startS) return [];
    const [from, to] = [startS, end].map((s) => printCaptionTime(s * 1000, WEBVTT_TIME));
    const words = title.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
    return [`${from} --> ${to}\n${words}`];
  });
  return `${['WEBVTT', ...each].join('\n\n')}\n`;
}
