import { pastedLine, pastedParagraphs } from '#lib/publish/document/pasted-words';

/** A piece of a line: words, words that stand out, or a link. */
export type Span =
  string | { readonly strong: string } | { readonly label: string; readonly url: string };

export type Line = readonly Span[];

/** What a text to paste is made of; no form of it knows more. */
export type Part =
  | { readonly kind: 'heading'; readonly rank: 1 | 2; readonly text: string }
  /** A paragraph whose lines stay apart. */
  | { readonly kind: 'lines'; readonly lines: readonly Line[] }
  | { readonly kind: 'list'; readonly items: readonly Line[] };

/** Parts that stand together, with space around them. */
export type Section = readonly Part[];

export type TextDocument = readonly Section[];

/** One paragraph of lines; of nothing it is no part. */
export function lines(...all: readonly (string | Line)[]): Part[] {
  const kept = all.map((line) => (typeof line === 'string' ? [line] : line)).filter(isSeen);
  return kept.length > 0 ? [{ kind: 'lines', lines: kept }] : [];
}

export function heading(rank: 1 | 2, text: string): Part[] {
  return pastedLine(text) === '' ? [] : [{ kind: 'heading', rank, text }];
}

export function list(items: readonly (string | Line)[]): Part[] {
  const kept = items.map((item) => (typeof item === 'string' ? [item] : item)).filter(isSeen);
  return kept.length > 0 ? [{ kind: 'list', items: kept }] : [];
}

/** What a person wrote in several lines, paragraph by paragraph. */
export function paragraphs(text: string): Part[] {
  return pastedParagraphs(text).flatMap((all) => lines(...all));
}

/** The same parts with paragraphs that follow each other made one. */
export function joined(parts: readonly Part[]): Part[] {
  return parts.reduce<Part[]>((all, part) => {
    const last = all.at(-1);
    if (part.kind !== 'lines' || last?.kind !== 'lines') return [...all, part];
    return [...all.slice(0, -1), { kind: 'lines', lines: [...last.lines, ...part.lines] }];
  }, []);
}

function isSeen(line: Line): boolean {
  return line.some((span) => pastedLine(spanWords(span)) !== '');
}

function spanWords(span: Span): string {
  if (typeof span === 'string') return span;
  return 'strong' in span ? span.strong : span.url;
}
