import type { Line, Part, Section, Span, TextDocument } from '#lib/publish/document/document';
import { linkUrl } from '#lib/publish/document/link-url';
import { pastedLine } from '#lib/publish/document/pasted-words';

/**
 * A document as plain text for a field that knows no markup: headings in capitals, '- ' before what is listed. What
 * such fields take for markup is taken out of the words, and angle brackets, which many refuse, are turned into others
 * (common practice, no source). Line feeds only, none at the end; no line is broken, since fields wrap by themselves.
 */
export function plainText(document: TextDocument): string {
  return document
    .map(section)
    .filter((text) => text !== '')
    .join('\n\n');
}

function section(parts: Section): string {
  return parts.reduce((text, part, index) => {
    const words = partText(part);
    if (text === '' || words === '') return text + words;
    // Two paragraphs in a row would read as one.
    const apart = part.kind === 'lines' && parts[index - 1]?.kind === 'lines';
    return `${text}${apart ? '\n\n' : '\n'}${words}`;
  }, '');
}

function partText(part: Part): string {
  if (part.kind === 'heading') {
    const text = title(part.text);
    return part.rank === 1 ? text : text.toUpperCase();
  }
  if (part.kind === 'list') {
    return part.items
      .map(lineText)
      .filter((text) => text !== '')
      .map((text) => `- ${text}`)
      .join('\n');
  }
  return part.lines
    .map(lineText)
    .filter((text) => text !== '')
    .join('\n');
}

const lineText = (line: Line) => pastedLine(unmarked(pastedLine(line.map(spanText).join(''))));

function spanText(span: Span): string {
  if (typeof span === 'string') return span;
  return 'strong' in span ? span.strong : `${span.label}: ${linkUrl(span.url)}`;
}

/** A title that begins no heading and is no tag: "#1 stew" is read "No. 1 stew". */
function title(text: string): string {
  const line = pastedLine(unmarked(pastedLine(text))).replace(/^#(?=\d)/, 'No. ');
  return pastedLine(line.replace(/^[#\s]+/, ''));
}

/** Words without the marks of markup: a heading's, and those around words that stand out. */
function unmarked(text: string): string {
  let words = text;
  for (const mark of MARKS) words = words.replace(mark, '$1');
  return words
    .replace(/</g, '‹')
    .replace(/>/g, '›')
    .replace(/^(#+( +|$))+/, '');
}

/** `**so**`, `__so__`, `~~so~~`, `*so*`, `_so_`, `` `so` ``: marks that begin and end at the edge of words. */
const MARKS = ['\\*\\*', '__', '~~', '\\*', '_', '`'].map((mark) => {
  const inner = `(?:(?!${mark})\\S|(?!${mark})\\S(?:(?!${mark}).)*(?!${mark})\\S)`;
  return new RegExp(`(?<![\\p{L}\\p{N}/])${mark}(${inner})${mark}(?![\\p{L}\\p{N}])`, 'gu');
});
