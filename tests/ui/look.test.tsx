import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { LookView } from '../../app/look/_components/look-view';

vi.mock('next/navigation', () => ({
  usePathname: () => '/look',
  useRouter: () => ({ push: () => undefined, refresh: () => undefined }),
}));
vi.mock('next/headers', () => ({ cookies: () => Promise.resolve({ set: () => undefined }) }));

const app = fileURLToPath(new URL('../../app/', import.meta.url));

function sources(folder: string): { name: string; text: string }[] {
  return readdirSync(app + folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.tsx'))
    .map((name) => ({
      name: `${folder}/${name}`,
      text: readFileSync(`${app}${folder}/${name}`, 'utf8'),
    }));
}

/** The one that listens to keys may stand on a page once only; the frame of every page holds it. */
const IN_THE_FRAME = ['Shortcuts'];

describe('the page of the look', () => {
  const components = [...sources('_ui'), ...sources('_forms')].flatMap(({ name, text }) =>
    [...text.matchAll(/^export (?:async )?function ([A-Z]\w*)/gm)].map(
      (m) => [m[1] ?? '', name] as const,
    ),
  );
  const look = sources('look')
    .map(({ text }) => text)
    .join('\n');

  test('there are elements to be shown', () => {
    expect(components.length).toBeGreaterThan(30);
  });

  test.each(components)('shows %s of %s', (component) => {
    const drawn = new RegExp(`<${component}[\\s/>]`);
    if (IN_THE_FRAME.includes(component)) {
      expect(readFileSync(`${app}layout.tsx`, 'utf8')).toMatch(drawn);
    } else {
      expect(drawn.test(look)).toBe(true);
    }
  });

  const markup = renderToStaticMarkup(<LookView />);

  test('draws each by day and at night, with no id twice', () => {
    const count = (theme: string) => markup.split(`data-theme="${theme}"`).length - 1;
    expect(count('day')).toBeGreaterThan(20);
    expect(count('night')).toBe(count('day'));
    const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  });

  test('says when to use each, in one or more whole sentences', () => {
    for (const [, when] of markup.matchAll(/<\/h3><p [^>]*>([^<]*)<\/p>/g)) {
      expect(when).toMatch(/^[A-Z].{20,}\.$/);
    }
  });
});
