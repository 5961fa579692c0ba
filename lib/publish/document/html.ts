import type { Line, Part, Section, Span, TextDocument } from '#lib/publish/document/document';
import { linkUrl } from '#lib/publish/document/link-url';
import { pastedLine, pastedSpan } from '#lib/publish/document/pasted-words';

/** A document as the inner part of an HTML page, without style or script. No line feed at the end. */
export function html(document: TextDocument): string {
  return document.flatMap(section).join('\n');
}

const section = (parts: Section): string[] => parts.map(partText).filter((text) => text !== '');

function partText(part: Part): string {
  if (part.kind === 'heading') {
    return `<h${part.rank}>${escaped(pastedLine(part.text))}</h${part.rank}>`;
  }
  if (part.kind === 'list') {
    return `<ul>\n${part.items.map((item) => `<li>${lineText(item)}</li>`).join('\n')}\n</ul>`;
  }
  return `<p>${part.lines.map(lineText).join('<br>\n')}</p>`;
}

const lineText = (line: Line) => line.map(spanText).join('').trim();

function spanText(span: Span): string {
  if (typeof span === 'string') return escaped(pastedSpan(span));
  if ('strong' in span) return `<strong>${escaped(pastedLine(span.strong))}</strong>`;
  return `<a href="${escaped(linkUrl(span.url))}">${escaped(pastedLine(span.label))}</a>`;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (char) => ENTITIES[char] ?? char);
}
