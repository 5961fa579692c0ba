/**
 * The one owner of the colours. The stylesheet of `paletteCss` is the only place where they reach a page,
 * and `tests/ui/contrast.test.ts` holds every ink against every ground it may stand on.
 *
 * Butcher's paper and near-black ink; grease-pencil red for what needs the person's hand,
 * oven-glass teal for what runs by itself. The slate is dark by day and by night.
 */

/** Grounds that text and marks stand on. */
export const GROUNDS = ['paper', 'raised', 'sunk', 'hand-wash', 'self-wash'] as const;

/** Inks for text of any size; each may stand on each of the grounds. */
export const TEXT_INKS = ['ink', 'soft', 'hand', 'self'] as const;

/** Inks for marks and the edges of controls, never for text. */
export const MARK_INKS = ['edge'] as const;

/** `line` is a hairline that only decorates: nothing is known by it alone. */
export const TOKENS = [
  ...GROUNDS,
  ...TEXT_INKS,
  ...MARK_INKS,
  'line',
  'slate',
  'chalk',
  'chalk-soft',
] as const;

export type Token = (typeof TOKENS)[number];
export type Palette = Readonly<Record<Token, string>>;

export const DAY: Palette = {
  paper: '#F2E8D9',
  raised: '#FCF8F0',
  sunk: '#E7DBC6',
  'hand-wash': '#F5DBD0',
  'self-wash': '#D3E4E0',
  ink: '#1D1A16',
  soft: '#574D41',
  hand: '#A3211A',
  self: '#0D565D',
  edge: '#7D7059',
  line: '#CBBEA6',
  slate: '#23272A',
  chalk: '#F5F1E8',
  'chalk-soft': '#CFC8BA',
};

/** The kitchen at night: the same roles, a lamp over a dark bench. */
export const NIGHT: Palette = {
  paper: '#161513',
  raised: '#201E1B',
  sunk: '#0E0D0C',
  'hand-wash': '#3A1F1A',
  'self-wash': '#16302F',
  ink: '#F3EBDD',
  soft: '#BDB19F',
  hand: '#FF9080',
  self: '#74CBD0',
  edge: '#8F8373',
  line: '#3D3831',
  slate: '#060708',
  chalk: '#F3EFE6',
  'chalk-soft': '#BDB5A7',
};

/** On paper out of a printer: black on white, nothing known by colour, no wide dark areas. */
export const PRINT: Palette = {
  paper: '#FFFFFF',
  raised: '#FFFFFF',
  sunk: '#EEEEEE',
  'hand-wash': '#FFFFFF',
  'self-wash': '#F3F3F3',
  ink: '#000000',
  soft: '#333333',
  hand: '#000000',
  self: '#000000',
  edge: '#555555',
  line: '#AAAAAA',
  slate: '#FFFFFF',
  chalk: '#000000',
  'chalk-soft': '#333333',
};

export const PALETTES = { day: DAY, night: NIGHT, print: PRINT } as const;

/** A foreground on a ground, and the least contrast that the pair must have. */
export interface ColourPair {
  readonly fore: Token;
  readonly ground: Token;
  readonly least: number;
}

/** WCAG 2.2, success criterion 1.4.3 (text) and 1.4.11 (marks and the edges of controls). */
const TEXT = 4.5;
const MARK = 3;

/**
 * Every pair that an element may use: all inks on all grounds, the reversed pairs of filled buttons and
 * clock marks, and the slate's own. An ink outside this list has no class to be used with.
 */
export const PAIRS: readonly ColourPair[] = [
  ...GROUNDS.flatMap((ground) => [
    ...TEXT_INKS.map((fore) => ({ fore, ground, least: TEXT })),
    ...MARK_INKS.map((fore) => ({ fore, ground, least: MARK })),
  ]),
  // Text over the hatching of an open or a provisional row crosses hairlines of the colour `line`.
  { fore: 'ink', ground: 'line', least: TEXT },
  { fore: 'soft', ground: 'line', least: TEXT },
  { fore: 'paper', ground: 'ink', least: TEXT },
  { fore: 'paper', ground: 'hand', least: TEXT },
  { fore: 'chalk', ground: 'slate', least: TEXT },
  { fore: 'chalk-soft', ground: 'slate', least: TEXT },
];

function declarations(palette: Palette): string {
  return TOKENS.map((token) => `--${token}:${palette[token]}`).join(';');
}

/**
 * The stylesheet that gives the variables their values: day unless the device asks for dark, or the
 * person chose (`data-theme` on the root). The same attribute on a part of a page gives that part its
 * theme. Print wins over all.
 */
export function paletteCss(): string {
  const day = declarations(DAY);
  const night = declarations(NIGHT);
  return [
    `:root{color-scheme:light;${day}}`,
    `@media (prefers-color-scheme:dark){:root:not([data-theme=day]){color-scheme:dark;${night}}}`,
    `[data-theme=day]{color-scheme:light;${day}}`,
    `[data-theme=night]{color-scheme:dark;${night}}`,
    `[data-theme=print]{color-scheme:light;${declarations(PRINT)}}`,
    // Said three times, so that it outweighs the rule for dark devices.
    `@media print{:root:root:root,[data-theme][data-theme][data-theme]{color-scheme:light;${declarations(PRINT)}}}`,
  ].join('\n');
}
