import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const app = fileURLToPath(new URL('../../app/', import.meta.url));
const sources = readdirSync(app, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.tsx'))
  .map((name) => ({ name, text: readFileSync(app + name, 'utf8') }));

// HTML Living Standard, 4.4.1: a paragraph holds phrasing content only. A browser closes it before a form,
// and the page then differs from what the server sent.
test('no form stands in a paragraph', () => {
  expect(sources.length).toBeGreaterThan(20);
  for (const { name, text } of sources) {
    const paragraphs = text.match(/<p(?: [^>]*)?>(?:(?!<\/p>)[\s\S])*?<\/p>/g) ?? [];
    const holding = paragraphs.filter((each) => /<(?:form|\w*Form|FormFrame)\b/.test(each));
    expect(holding, name).toEqual([]);
  }
});
