import type { Line, Part, Section, Span, TextDocument } from '#lib/publish/document/document';
import { linkUrl } from '#lib/publish/document/link-url';
import { pastedLine, pastedSpan } from '#lib/publish/document/pasted-words';

/**
 * A document as Markdown (CommonMark 0.31): whatever the words hold is shown as it was typed. A line that stays apart
 * ends in a backslash, since spaces at the end of a line do not survive everywhere. No line feed at the end.
 */
export function markdown(document: TextDocument): string {
  return document.flatMap(section).join('\n\n');
}

const section = (parts: Section): string[] => parts.map(partText).filter((text) => text !== '');

function partText(part: Part): string {
  if (part.kind === 'heading') {
    return `${'#'.repeat(part.rank)} ${escaped(pastedLine(part.text))}`;
  }
  if (part.kind === 'list') return part.items.map((item) => `- ${lineText(item)}`).join('\n');
  return part.lines.map(lineText).join('\\\n');
}

function lineText(line: Line): string {
  const text = line.map(spanText).join('').trim();
  // What begins a list, a heading's underline or a definition only where it stands first.
  return text.replace(/^[+\-=:]/, '\\$&').replace(/^(\d{1,9})([.)])/, '$1\\$2');
}

function spanText(span: Span): string {
  if (typeof span === 'string') return escaped(pastedSpan(span));
  if ('strong' in span) return `**${escaped(pastedLine(span.strong))}**`;
  return `[${label(pastedLine(span.label))}](<${linkUrl(span.url)}>)`;
}

/** A link's words hold no link. */
const label = (text: string) => text.replace(/[\\`*_[\]<>~|&#$:]/g, '\\$&');

/**
 * Section 2.4: a backslash before ASCII punctuation takes its meaning away; that of $ is common and no part of it. An address among the words is written as
 * a link of its own (6.5): renderers that find it by themselves would take a backslash for a part of it.
 */
function escaped(text: string): string {
  return text
    .split(/(https?:\/\/[!-;=?-~]+)/)
    .map((each, index) => {
      return index % 2 === 1 ? `<${linkUrl(each)}>` : each.replace(/[\\`*_[\]<>~|&#$]/g, '\\$&');
    })
    .join('');
}
