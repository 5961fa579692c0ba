import fc from 'fast-check';
import { parsers as htmlParsers } from 'prettier/plugins/html';
import { parsers as markdownParsers } from 'prettier/plugins/markdown';
import { describe, expect, it } from 'vitest';
import { DESCRIPTION_FORMS } from '#lib/episode/publish-schema';
import {
  heading,
  lines,
  list,
  paragraphs,
  type TextDocument,
} from '#lib/publish/document/document';
import { linkUrl } from '#lib/publish/document/link-url';
import { pastedLine, pastedParagraphs } from '#lib/publish/document/pasted-words';
import { render, textLength } from '#lib/publish/document/render';

/** Words as somebody might type or paste them to break a text: marks of markup, what is not seen, several scripts. */
const HOSTILE = [
  ...['# ', '#', '##', '*', '**', '_', '__', '`', '~~', '<', '>', '&', '&amp;', '[', ']', '(', ')'],
  ...[
    '!',
    '|',
    '\\',
    '-',
    '+',
    '=',
    '1.',
    '2)',
    ':',
    '"',
    "'",
    '<b>',
    '</p>',
    '<script>',
    '$',
    '@',
  ],
  ...[
    '\t',
    '\u00a0',
    '\u200b',
    '\u200d',
    '\ufeff',
    '\u202e',
    '\u2028',
    '\r\n',
    '\n',
    '\0',
    '\ud800',
  ],
  ...[
    'e\u0301',
    'ﬁ',
    'ß',
    '👩\u200d🍳',
    '1\ufe0f\u20e3',
    'שלום',
    '日本',
    'https://a.example/_b_',
    ' ',
  ],
  ...['stew', 'Oats', '12', 'cup'],
];
const hostile = fc.array(fc.constantFrom(...HOSTILE), { maxLength: 9 }).map((all) => all.join(''));
const address = fc
  .array(fc.constantFrom('a', '_', '(', ')', '<', '>', '"', '%20', '&', '?b=', '\\', '`'), {
    maxLength: 6,
  })
  .map((all) => `https://example.org/${all.join('')}`);
const part = fc.oneof(
  hostile.map((text) => heading(1, text)),
  hostile.map((text) => heading(2, text)),
  fc.array(hostile, { maxLength: 3 }).map((all) => lines(...all)),
  fc.array(hostile, { maxLength: 3 }).map((all) => list(all)),
  fc.tuple(hostile, address).map(([label, url]) => lines([{ label: label || 'x', url }])),
  hostile.map((text) => lines([{ strong: 'The day' }, `: ${text}`])),
);
const documents: fc.Arbitrary<TextDocument> = fc.array(
  fc.array(part, { maxLength: 3 }).map((parts) => parts.flat()),
  { maxLength: 4 },
);

/** What a reader of a text made from a document sees, block by block, link addresses behind their words. */
type Seen = readonly string[];

function seenIn(document: TextDocument, words = (text: string) => text): Seen {
  return document
    .flat()
    .flatMap((each): string[] => {
      if (each.kind === 'heading') return [`h${each.rank} ${words(pastedLine(each.text))}`];
      const rows = each.kind === 'list' ? each.items : each.lines;
      return rows.map((row) =>
        row
          .map((span) => {
            if (typeof span === 'string') return words(span);
            if ('strong' in span) return span.strong;
            return `${pastedLine(span.label)} → ${linkUrl(span.url)}`;
          })
          .join(''),
      );
    })
    .map(pastedLine);
}

interface MarkdownNode {
  readonly type: string;
  readonly value?: string;
  readonly depth?: number;
  readonly url?: string;
  readonly children?: readonly MarkdownNode[];
}

/** By the parser that a general-purpose formatter uses for Markdown. */
function seenInMarkdown(text: string): Seen {
  const rows: string[] = [];
  const inline = (node: MarkdownNode): string => {
    if (node.type === 'break') return '\n';
    const inner = (node.children ?? []).map(inline).join('');
    if (node.type === 'link') return inner === node.url ? inner : `${inner} → ${node.url ?? ''}`;
    if (node.children) return inner;
    if (node.type === 'text' || node.type === 'sentence') return node.value ?? '';
    throw new Error(`${node.type} in ${text}`);
  };
  const block = (node: MarkdownNode): void => {
    if (node.type === 'heading') {
      rows.push(`h${String(node.depth)} ${(node.children ?? []).map(inline).join('')}`);
    } else if (node.type === 'paragraph') {
      rows.push(...(node.children ?? []).map(inline).join('').split('\n'));
    } else if (['root', 'list', 'listItem'].includes(node.type)) {
      (node.children ?? []).forEach(block);
    } else throw new Error(`${node.type} in ${text}`);
  };
  block(markdownParsers.markdown.parse(text, {} as never) as MarkdownNode);
  return rows.map(pastedLine);
}

interface HtmlNode {
  readonly kind: string;
  readonly name?: string;
  readonly value?: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly children?: readonly HtmlNode[];
}

/** By the parser that a general-purpose formatter uses for HTML. */
function seenInHtml(text: string): Seen {
  const rows: string[] = [];
  const inline = (node: HtmlNode): string => {
    if (node.kind === 'text') return unescaped(node.value ?? '');
    if (node.name === 'br') return '\u0001';
    const inner = (node.children ?? []).map(inline).join('');
    if (node.name === 'strong') return inner;
    const href = node.attrs?.find(({ name }) => name === 'href')?.value;
    if (node.name === 'a') return `${inner} → ${unescaped(href ?? '')}`;
    throw new Error(`<${node.name ?? node.kind}> in ${text}`);
  };
  const block = (node: HtmlNode): void => {
    if (node.kind === 'text' && (node.value ?? '').trim() === '') return;
    const inner = node.children ?? [];
    if (node.name === 'h1' || node.name === 'h2') {
      rows.push(`${node.name} ${inner.map(inline).join('')}`);
    } else if (node.name === 'p' || node.name === 'li') {
      rows.push(...inner.map(inline).join('').split('\u0001'));
    } else if (node.name === 'ul' || node.kind === 'root') inner.forEach(block);
    else throw new Error(`<${node.name ?? node.kind}> in ${text}`);
  };
  block(
    htmlParsers.html.parse(text, { originalText: text, filepath: 'x.html', name: 'html' } as never),
  );
  return rows.map(pastedLine);
}

const unescaped = (text: string) =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');

describe('a text to paste', () => {
  it('has in every form only what survives pasting: no tab, no space at an end of a line, nothing unseen, line feeds', () => {
    fc.assert(
      fc.property(documents, (document) => {
        for (const form of DESCRIPTION_FORMS) {
          const text = render(document, form);
          expect(text).toBe(text.normalize('NFC'));
          expect(text).not.toMatch(/[^\S\n ]/);
          expect(text.replace(/\n/g, '')).not.toMatch(/[\p{Cc}\p{Cs}]/u);
          expect(text).not.toMatch(/ $/m);
          expect(text).not.toMatch(/^ /m);
          expect(text).not.toMatch(/\n{3,}|^\n|\n$/);
          expect(text).not.toMatch(/[\u200b\u200c\u2060\ufeff\u00ad\u202a-\u202e\u2066-\u2069]/);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('as plain text has no markup of any kind, also where a title is made of it', () => {
    fc.assert(
      fc.property(documents, (document) => {
        const text = render(document, 'plain');
        expect(text).not.toMatch(/[<>]/);
        expect(text).not.toMatch(/^#+(\s|$)/m);
        const titles = document.flat().filter(({ kind }) => kind === 'heading');
        for (const each of titles) {
          expect(render([[each]], 'plain')).not.toMatch(/^#/);
        }
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    ['# Stew', 'Stew'],
    ['#1 stew', 'No. 1 stew'],
    ['**The** _best_ `stew`', 'The best stew'],
    ['2 * 3 and snake_case_name', '2 * 3 and snake_case_name'],
    ['<1 g & more', '‹1 g & more'],
    ['a\tb\u200b\u00a0c\u202e', 'a b c'],
    ['👩\u200d🍳 cooks', '👩\u200d🍳 cooks'],
    ['Cafe\u0301', 'Café'],
  ])('reads the title %j as %j', (title, words) => {
    expect(render([heading(1, title)], 'plain')).toBe(words);
  });

  it('keeps tags and addresses that the person wrote', () => {
    const hook = paragraphs('#mealprep\n\nhttps://example.org/a_b_c and _more_');
    expect(render([hook], 'plain')).toBe('#mealprep\n\nhttps://example.org/a_b_c and more');
  });

  // CommonMark, as read by remark-parse within prettier.
  it('as Markdown shows the words as they were typed, whatever they hold', () => {
    fc.assert(
      fc.property(documents, (document) => {
        // An address among the words is a link there, and written as one.
        const words = (text: string) => pastedLine(text).replace(/https?:[!-;=?-~]+/g, linkUrl);
        expect(seenInMarkdown(render(document, 'markdown'))).toEqual(seenIn(document, words));
      }),
      { numRuns: 400 },
    );
  });

  // HTML, as read by angular-html-parser within prettier.
  it('as HTML shows the words as they were typed, and no element beside its own', () => {
    fc.assert(
      fc.property(documents, (document) => {
        expect(seenInHtml(render(document, 'html'))).toEqual(seenIn(document));
      }),
      { numRuns: 400 },
    );
  });

  it('cleans words once and for all', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        expect(pastedLine(pastedLine(text))).toBe(pastedLine(text));
        for (const line of pastedParagraphs(text).flat()) expect(pastedLine(line)).toBe(line);
      }),
    );
  });

  it('breaks no line: fields wrap by themselves', () => {
    const long = 'word '.repeat(200).trim();
    for (const form of DESCRIPTION_FORMS) {
      expect(render([lines(long)], form).split('\n')).toHaveLength(1);
    }
  });

  it('is counted as people count and as fields commonly do', () => {
    expect(textLength('a🍳')).toEqual({ codePoints: 2, utf16Units: 3 });
  });
});
