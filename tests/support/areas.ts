/** A row of the table of areas in DEVELOPERS.md. */
export interface Area {
  /** A folder ending in `/`, or one file. */
  readonly path: string;
  /** Areas that it may import beside itself, as paths. */
  readonly mayImport: readonly string[];
}

/** The generated database client, as a place that an area may import. */
export const CLIENT = 'prisma/generated/';

/** What every area may import. */
export const SHARED = 'lib/result.ts';

/** Areas of `lib/` that are not pure: they touch files, threads or the database. */
export const IMPURE = ['lib/store/', 'lib/work/', 'lib/sheet/'];

/**
 * The table of areas: the first table of a Markdown text whose columns are area, owns, may import.
 * The last column holds names of areas of `lib/`, or paths in backticks, or the words below.
 * Example row: "| `lib/foods/` | … | units |" → { path: 'lib/foods/', mayImport: ['lib/units/'] }.
 */
export function readAreas(markdown: string): Area[] {
  const lines = markdown.split('\n').map((line) => line.trim());
  const head = lines.findIndex((line) =>
    /^\|\s*area\s*\|\s*owns\s*\|\s*may import\s*\|$/i.test(line),
  );
  if (head < 0) throw new Error('DEVELOPERS.md has no table "area | owns | may import".');
  const end = lines.findIndex((line, i) => i > head && !line.startsWith('|'));
  const rows = lines.slice(head + 2, end < 0 ? undefined : end).map((line) => {
    const cells = line.split('|').map((cell) => cell.trim());
    const path = /^`([^`]+)`$/.exec(cells[1] ?? '')?.[1];
    if (path === undefined) throw new Error(`No path in backticks in the row: ${line}`);
    return { path, words: cells[3] ?? '', line };
  });
  const paths = rows.map((row) => row.path);
  const lib = paths.filter((path) => path.startsWith('lib/') && path !== SHARED);
  const pure = lib.filter((path) => !IMPURE.includes(path));
  const meaning = (word: string, line: string): readonly string[] => {
    if (word === '–') return [];
    if (word === 'every pure area') return pure;
    if (word === 'all of lib') return lib;
    if (word === 'everything') return [...paths, CLIENT];
    if (word === 'the generated client') return [CLIENT];
    const path = /^`([^`]+)`$/.exec(word)?.[1] ?? `lib/${word}/`;
    if (!paths.includes(path)) throw new Error(`"${word}" is no area, in the row: ${line}`);
    return [path];
  };
  return rows.map(({ path, words, line }) => ({
    path,
    mayImport: words.split(',').flatMap((word) => meaning(word.trim(), line)),
  }));
}

/** The area that a file belongs to: the longest path that it stands under. */
export function areaOf(file: string, areas: readonly Area[]): Area | undefined {
  return areas
    .filter(({ path }) => file === path || (path.endsWith('/') && file.startsWith(path)))
    .sort((a, b) => b.path.length - a.path.length)[0];
}
