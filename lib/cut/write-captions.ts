import { printCaptionTime, SUBRIP_TIME, WEBVTT_TIME } from '#lib/cut/caption-times';
import { cuesOf, type Captions, type Cue } from '#lib/cut/captions';

/**
 * A WebVTT file, lines ended by LF. What WebVTT cannot say is changed as little as it allows: an arrow within words
 * is written `--&gt;`, empty lines within them are left out, and what ends where it begins ends a millisecond later.
 * Law: what was read from a file that keeps to the standard is written as it was, but for its spacing.
 */
export function writeWebVtt(captions: Captions): string {
  const [behind = '', ...under] = captions.head.split('\n');
  const head = [behind === '' ? 'WEBVTT' : `WEBVTT ${behind}`, ...under].join('\n');
  const blocks = captions.blocks.map((block) =>
    block.kind === 'cue' ? webVttCue(block) : block.text,
  );
  return `${[head, ...blocks].join('\n\n')}\n`;
}

function webVttCue(cue: Cue): string {
  const start = printCaptionTime(cue.startMs, WEBVTT_TIME);
  const end = printCaptionTime(Math.max(cue.endMs, cue.startMs + 1), WEBVTT_TIME);
  const times = [start, '-->', end, ...(cue.settings === '' ? [] : [cue.settings])].join(' ');
  const words = cue.text
    .replaceAll('-->', '--&gt;')
    .replace(/\n{2,}/g, '\n')
    .replace(/^\n|\n$/g, '');
  const name = cue.name.replaceAll('-->', '').trim();
  return [...(name === '' ? [] : [name]), times, ...(words === '' ? [] : [words])].join('\n');
}

/** A SubRip file, numbered from 1, lines ended by CRLF as its players expect (from memory); asides are left out. */
export function writeSubRip(captions: Captions): string {
  const cues = cuesOf(captions).map((cue, index) => {
    const start = printCaptionTime(cue.startMs, SUBRIP_TIME);
    const end = printCaptionTime(cue.endMs, SUBRIP_TIME);
    const behind = captions.format === 'subrip' && cue.settings !== '' ? ` ${cue.settings}` : '';
    return `${index + 1}\n${start} --> ${end}${behind}\n${cue.text}\n`;
  });
  return cues.join('\n').replaceAll('\n', '\r\n');
}
