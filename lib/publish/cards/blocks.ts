import type { CardNumber, CardRow } from '#lib/publish/cards/card';
import type { PartInks } from '#lib/publish/cards/inks';
import { linesOf } from '#lib/publish/cards/lines';
import {
  strokes,
  whiskerMarks,
  wide,
  WHISKER_HEIGHT,
  words,
  type Lettering,
} from '#lib/publish/cards/paint';

/** A part of a card that keeps together. Widths, heights and places are in units of layout. */
export interface Block {
  /** How wide it would be with all the room there is. */
  readonly natural: number;
  /** How wide it must be at least. */
  readonly least: number;
  readonly height: (width: number) => number;
  /** Draws it with its upper left corner at a point. */
  readonly draw: (x: number, y: number, width: number) => string;
  /** Drawn between it and one under it, at the height between them. */
  readonly rule?: (x: number, y: number, width: number) => string;
}

/** Sizes of type of a card; what is small already is not made smaller. */
export interface Type {
  readonly lead: number;
  readonly big: number;
  readonly title: number;
  readonly body: number;
  readonly small: number;
}

/**
 * Sizes of type, a part of the usual ones and never under the least.
 * @param huge for a picture that is looked at small
 */
export function typeOf(share: number, least: number, huge = false): Type {
  const size = (usual: number) => Math.max(least, usual * share);
  return huge
    ? { lead: size(300), big: size(132), title: size(72), body: size(56), small: size(52) }
    : { lead: size(136), big: size(76), title: size(66), body: size(42), small: size(37) };
}

/** From a line to the next, as a part of its size. */
export const LEADING = 1.28;
/** From the top of a line to its baseline, as a part of its size: capitals, and accents over them. */
const ASCENT = 0.94;

/** What was worked out for a width is kept for it: heights are asked for again and again. */
function byWidth<T>(work: (width: number) => T): (width: number) => T {
  const known = new Map<number, T>();
  return (width) => {
    const found = known.get(width) ?? work(width);
    known.set(width, found);
    return found;
  };
}

/** Lines of words. */
export function paragraph(text: string, lettering: Lettering, inks: PartInks): Block {
  const leading = lettering.size * (lettering.face === 'slate' ? 1.12 : LEADING);
  const lines = byWidth((width) => linesOf(text, lettering, width));
  return {
    natural: wide(text, lettering),
    least: 0,
    height: (width) => lines(width).length * leading,
    draw: (x, y, width) =>
      lines(width)
        .map((line, index) =>
          words(line, x, y + index * leading + lettering.size * ASCENT, lettering, inks),
        )
        .join(''),
  };
}

/** Each line of some words as a part of its own, so that a long text may go on another card. */
export function lineBlocks(
  text: string,
  lettering: Lettering,
  inks: PartInks,
  width: number,
): Block[] {
  return linesOf(text, lettering, width).map((line) => paragraph(line, lettering, inks));
}

/** A number with its hedge before and its unit behind, all on one baseline. */
function numberParts({ hedge, number, unit, label }: CardNumber, size: number, small: number) {
  const isOpen = number === null;
  const before = hedge === '' ? '' : `${hedge} `;
  const sizes = { figure: isOpen ? size * 0.72 : size, small: Math.max(small, size * 0.42) };
  const figure = { size: sizes.figure, face: 'text' } as const;
  const aside = { size: sizes.small, face: 'text' } as const;
  const gap = sizes.small * 0.26;
  const widths = {
    before: before === '' ? 0 : wide(before, aside) + gap,
    figure: wide(number ?? 'open', figure),
    behind: isOpen ? 0 : gap + wide(unit, aside),
  };
  const under = number === null && label === '' ? unit : label;
  return { before, figure, aside, gap, widths, isOpen, under };
}

/** The width of a whisker at least, so that a range can be seen on it. */
const LEAST_WHISKER = 190;
/** Between numbers that stand side by side. */
const BETWEEN = 56;

/** One number: the figure, its whisker, and what it is of. */
function numberBlock(of: CardNumber, size: number, small: number, inks: PartInks): Block {
  const { before, figure, aside, gap, widths, isOpen, under } = numberParts(of, size, small);
  const whole = widths.before + widths.figure + widths.behind;
  const label = { size: small, face: 'text', ink: inks.ink } as const;
  const below = [under, of.range].filter((text) => text !== '');
  const least = Math.max(whole, LEAST_WHISKER, ...below.map((text) => wide(text, label)));
  const base = size * 0.74;
  const marks = base + 22;
  return {
    natural: least,
    least,
    height: () => marks + WHISKER_HEIGHT + 6 + below.length * small * LEADING,
    draw: (x, y) => {
      const ink = isOpen ? inks.soft : inks.ink;
      return [
        words(before.trim(), x, y + base, { ...aside, ink }, inks),
        words(of.number ?? 'open', x + widths.before, y + base, { ...figure, ink }, inks),
        isOpen
          ? ''
          : words(
              of.unit,
              x + widths.before + widths.figure + gap,
              y + base,
              { ...aside, ink },
              inks,
            ),
        whiskerMarks(of, x, y + marks, Math.max(LEAST_WHISKER, whole), inks),
        ...below.map((text, index) =>
          words(
            text,
            x,
            y + marks + WHISKER_HEIGHT + 6 + (index * LEADING + ASCENT) * small,
            { ...label, ink: index === 0 && under !== '' ? inks.ink : inks.soft },
            inks,
          ),
        ),
      ].join('');
    },
  };
}

/** Numbers side by side on one baseline; where they have no room, those that have none go to a line of their own. */
export function numbersBlock(
  lead: CardNumber | null,
  others: readonly CardNumber[],
  type: Type,
  inks: PartInks,
): Block {
  const all = [
    ...(lead ? [numberBlock(lead, type.lead, type.small, inks)] : []),
    ...others.map((each) => numberBlock(each, type.big, type.small, inks)),
  ];
  const size = (index: number) => (lead && index === 0 ? type.lead : type.big);
  const rowsIn = (width: number): number[][] => {
    const rows: number[][] = [];
    let used = 0;
    all.forEach(({ least }, index) => {
      const row = rows.at(-1);
      if (row && used + BETWEEN + least <= width) {
        row.push(index);
        used += BETWEEN + least;
      } else {
        rows.push([index]);
        used = least;
      }
    });
    // The lead by itself rather than with some of the others beside it.
    if (lead && rows.length > 1 && (rows[0]?.length ?? 0) > 1) {
      const rest = all.map((_, index) => index).slice(1);
      const fits = rest.reduce((sum, index) => sum + (all[index]?.least ?? 0) + BETWEEN, -BETWEEN);
      if (fits <= width) return [[0], rest];
    }
    return rows;
  };
  const rowHeight = (row: readonly number[]) => {
    const drop = Math.max(...row.map((index) => size(index) * 0.74));
    return Math.max(
      ...row.map((index) => (all[index]?.height(0) ?? 0) + drop - size(index) * 0.74),
    );
  };
  const gap = 26;
  return {
    natural: all.reduce((sum, { least }) => sum + least + BETWEEN, -BETWEEN),
    least: Math.max(0, ...all.map(({ least }) => least)),
    height: (width) =>
      rowsIn(width).reduce((sum, row) => sum + rowHeight(row) + gap, all.length > 0 ? -gap : 0),
    draw: (x, y, width) => {
      let top = y;
      return rowsIn(width)
        .map((row) => {
          const drop = Math.max(...row.map((index) => size(index) * 0.74));
          let left = x;
          const drawn = row.map((index) => {
            const block = all[index];
            const from = left;
            left += (block?.least ?? 0) + BETWEEN;
            return block?.draw(from, top + drop - size(index) * 0.74, block.least) ?? '';
          });
          top += rowHeight(row) + gap;
          return drawn.join('');
        })
        .join('');
    },
  };
}

/** A line of a list: words on the left, their amount on the right, over a hairline. */
export function rowBlock({ words: text, amount }: CardRow, type: Type, inks: PartInks): Block {
  const lettering = { size: type.body, face: 'text', ink: inks.ink } as const;
  const gap = 40;
  const own = amount === '' ? 0 : wide(amount, lettering);
  const leading = type.body * LEADING;
  const pad = type.body * 0.2;
  /** Amounts that leave the words less than half of the line stand under them. */
  const plan = byWidth((width) => {
    const beside = own + gap <= width * 0.55;
    const left = linesOf(text, lettering, amount !== '' && beside ? width - own - gap : width);
    const right = amount === '' || beside ? [] : linesOf(amount, lettering, width);
    return { beside, left, right };
  });
  const height = (width: number) => {
    const { beside, left, right } = plan(width);
    // An amount beside words of blanks alone has a line as well.
    const least = beside && amount !== '' ? 1 : 0;
    return Math.max(least, left.length + right.length) * leading + 2 * pad;
  };
  return {
    natural: wide(text, lettering) + (amount === '' ? 0 : gap + own),
    least: 0,
    height,
    draw: (x, y, width) => {
      const { beside, left, right } = plan(width);
      const line = (index: number) => y + pad + index * leading + type.body * 0.86;
      return [
        ...left.map((each, index) => words(each, x, line(index), lettering, inks)),
        ...right.map((each, index) =>
          words(each, x, line(left.length + index), { ...lettering, ink: inks.soft }, inks),
        ),
        beside && amount !== '' ? words(amount, x + width - own, line(0), lettering, inks) : '',
      ].join('');
    },
    rule: (x, y, width) =>
      inks.ground === null
        ? ''
        : strokes(`M${x} ${y}h${width}`, { width: 2, ink: inks.line }, { edge: null }),
  };
}
