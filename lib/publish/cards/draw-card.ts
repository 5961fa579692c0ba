import {
  lineBlocks,
  numbersBlock,
  paragraph,
  rowBlock,
  typeOf,
  type Block,
  type Type,
} from '#lib/publish/cards/blocks';
import { changeBlock } from '#lib/publish/cards/change-block';
import { STANDING_MARK, type Card } from '#lib/publish/cards/card';
import { cardFrame, type CardFrame, type CardSize } from '#lib/publish/cards/frame';
import {
  cardInks,
  PLATE_OPACITY,
  type CardColours,
  type CardGround,
} from '#lib/publish/cards/inks';
import { linesOf } from '#lib/publish/cards/lines';
import { box, pencil, stripes, strokes, wide, words } from '#lib/publish/cards/paint';
import { fitsOne, pagesOf, type Page, type Parts } from '#lib/publish/cards/pages';

/** How a card is drawn. */
export interface CardLook {
  readonly size: CardSize;
  readonly ground: CardGround;
  readonly colours: CardColours;
}

/** Parts of type that are tried, the largest first, before a card becomes several. */
const SHARES = [1, 0.92, 0.85, 0.78, 0.7, 0.62] as const;
/** The part of type of a card that becomes several. */
const PAGED = 0.85;
/** The smallest type. */
const LAST = { share: SHARES[SHARES.length - 1] ?? 1 };
/** Rows from which a landscape card may have two columns. */
const COLUMNS_FROM = 6;
const STRIPES = 18;

/**
 * A card as pictures, each as SVG text of the size with a transparent ground. What does not fit with large type is set
 * smaller, then in two columns, then goes on to another picture, which says so: "2 of 3". All text stands in the
 * graphics-safe area, and nothing of the card is left out.
 * @example drawCard(card, { size: '1920x1080', ground: 'plate', colours })[0] // '<svg xmlns=…'
 */
export function drawCard(card: Card, { size, ground, colours }: CardLook): readonly string[] {
  const frame = cardFrame(size);
  const inks = cardInks(ground, colours);
  const room = frame.text.right - frame.text.left;
  const most = frame.text.bottom - frame.text.top;
  const huge = card.kind === 'thumbnail';
  const several = !frame.upright && card.rows.length >= COLUMNS_FROM;
  const tried = SHARES.flatMap((share) =>
    (several ? [1, 2] : [1]).map((columns) => ({ share, columns })),
  );
  const attempt = ({ share, columns }: { readonly share: number; readonly columns: number }) =>
    laidOut(card, { inks, room, most, type: typeOf(share, frame.leastType, huge), columns });
  const whole = tried.map(attempt).find(({ parts }) => isWideEnough(parts) && fitsOne(parts));
  const columns = several ? 2 : 1;
  const paged = [PAGED, ...SHARES.filter((share) => share < PAGED)].map((share) =>
    attempt({ share, columns }),
  );
  const laid =
    whole ?? paged.find(({ parts }) => isWideEnough(parts)) ?? attempt({ ...LAST, columns });
  const pages = pagesOf(laid.parts);
  return pages.map((page, index) =>
    picture(card, { frame, inks, ...laid, page, index, of: pages.length, ground }),
  );
}

interface Setting {
  readonly inks: ReturnType<typeof cardInks>;
  readonly room: number;
  readonly most: number;
  readonly type: Type;
  readonly columns: number;
}

interface Laid {
  readonly type: Type;
  readonly width: number;
  readonly parts: Parts;
}

/** How wide a card's text is at most: a list beside the food, not over all of it. */
const LIST_WIDTH = 860;
const TEXT_WIDTH = 1180;
const COLUMN_GAP = 64;

/** Whether numbers have room that can't be set in lines. */
function isWideEnough({ first, width }: Parts): boolean {
  return first.every(({ least }) => least <= width);
}

function laidOut(card: Card, { inks, room, most, type, columns }: Setting): Laid {
  const { body } = inks;
  const text = { size: type.body, face: 'text', ink: body.ink } as const;
  const small = { size: type.small, face: 'text', ink: body.soft } as const;
  const numbers = card.lead || card.others.length > 0;
  const changed = card.change && changeBlock(card.change, type, body);
  const first = [
    ...(numbers ? [numbersBlock(card.lead, card.others, type, body)] : []),
    ...(changed && changed.least <= room ? [changed] : []),
  ];
  const inWords =
    card.change && first.length === 0 && changed && changed.least > room
      ? [
          { words: 'before', amount: `${card.change.before} ${card.change.unit}` },
          { words: 'now', amount: `${card.change.after} ${card.change.unit}` },
        ]
      : [];
  const rows = [...inWords, ...card.rows].map((row) => rowBlock(row, type, body));
  const head = headNatural(card, type);
  const widest = Math.max(
    head,
    ...first.map(({ natural }) => natural),
    Math.min(
      columns > 1 ? room : LIST_WIDTH,
      columns * Math.max(0, ...rows.map(({ natural }) => natural)) + (columns - 1) * COLUMN_GAP,
    ),
    ...linesOf(card.say, text, Math.min(room, TEXT_WIDTH)).map((line) => wide(line, text)),
  );
  const width = Math.min(room, Math.max(widest, 420));
  const column = (width - (columns - 1) * COLUMN_GAP) / columns;
  const say = card.say === '' ? [] : lineBlocks(card.say, text, body, width);
  const notes = card.notes.flatMap((note) => lineBlocks(note, small, body, width));
  const height = headHeight(card, width, type);
  const parts = { first, say, rows, notes, columns, width, column, most: most - height };
  return { type, width, parts };
}

const titleOf = (type: Type) => ({ size: type.title, face: 'slate' }) as const;
const kickerOf = (type: Type) => ({ size: type.small, face: 'slate' }) as const;
/** Between the kicker and what stands on its right. */
const KICKER_GAP = 48;

function headNatural(card: Card, type: Type): number {
  const mark = STANDING_MARK[card.standing];
  const kicker = wide(card.kicker, kickerOf(type));
  const marked = mark === null ? 0 : wide(mark, kickerOf(type)) + KICKER_GAP;
  // A title wider than this is set in lines.
  const title = Math.min(wide(card.title, titleOf(type)), TEXT_WIDTH);
  return Math.max(kicker + marked + wide('12 of 12', kickerOf(type)) + KICKER_GAP, title);
}

const HEAD_GAP = 20;

function titleBlock(card: Card, type: Type, inks: Setting['inks']): Block {
  return paragraph(card.title, { ...titleOf(type), ink: inks.head.ink }, inks.head);
}

/** Kicker, mark and page share a line where they fit; else the mark and the page have one of their own. */
function kickerLines(card: Card, width: number, type: Type): number {
  const mark = STANDING_MARK[card.standing];
  const own = wide(card.kicker, kickerOf(type));
  const right = wide(`${mark ?? ''} 12 of 12`, kickerOf(type)) + 2 * KICKER_GAP;
  return own + right <= width ? 1 : 2;
}

function headHeight(card: Card, width: number, type: Type): number {
  const title =
    card.title === ''
      ? 0
      : paragraph(card.title, { ...titleOf(type), ink: '' }, NONE).height(width);
  return STRIPES + 12 + kickerLines(card, width, type) * type.small * 1.15 + title + 2 * HEAD_GAP;
}

const NONE = { ground: null, ink: '', soft: '', hand: '', line: '', edge: null };

interface Drawing extends Laid {
  readonly frame: CardFrame;
  readonly inks: Setting['inks'];
  readonly page: Page;
  readonly index: number;
  readonly of: number;
  readonly ground: CardGround;
}

function picture(card: Card, drawing: Drawing): string {
  const { frame, inks, page, width, type, ground } = drawing;
  const { padding, text, base } = frame;
  const head = headHeight(card, width, type);
  const height = head + page.height;
  // Along the lower edge, as titles stand; lists and upright pictures too.
  const top = text.bottom - height;
  const left = text.left;
  const plate = { x: left - padding.x, width: width + 2 * padding.x };
  const isEmpty = page.height === 0;
  const grounds =
    ground === 'outline'
      ? ''
      : [
          box(
            ...([
              plate.x,
              top - padding.y,
              plate.width,
              head + padding.y + (isEmpty ? padding.y : 0),
            ] as const),
            inks.head.ground ?? '',
            PLATE_OPACITY,
          ),
          stripes(plate.x, top - padding.y, plate.width, STRIPES, inks.head.ink, PLATE_OPACITY),
          isEmpty
            ? ''
            : box(
                plate.x,
                top + head,
                plate.width,
                page.height + padding.y,
                inks.body.ground ?? '',
                PLATE_OPACITY,
              ),
        ].join('');
  const drawn = [grounds, headDrawn(card, drawing, left, top), page.draw(left, top + head)].join(
    '',
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${frame.width}" height="${frame.height}" viewBox="0 0 ${base.width} ${base.height}">${drawn}</svg>`;
}

function headDrawn(card: Card, drawing: Drawing, x: number, top: number): string {
  const { inks, type, width, index, of, ground, frame } = drawing;
  const { head } = inks;
  const mark = STANDING_MARK[card.standing];
  const count = of > 1 ? `${index + 1} of ${of}` : '';
  const lettering = { ...kickerOf(type), ink: head.soft };
  const y = top + STRIPES + 12 - frame.padding.y / 2;
  const first = y + type.small * 0.86;
  const two = kickerLines(card, width, type) === 2;
  const second = two ? first + type.small * 1.15 : first;
  const markWide = wide(mark ?? '', lettering);
  const markAt = two
    ? x
    : x + width - markWide - (count === '' ? 0 : wide(count, lettering) + KICKER_GAP);
  const title = titleBlock(card, type, inks);
  const titleTop = y + (two ? 2 : 1) * type.small * 1.15 + HEAD_GAP / 2;
  return [
    words(card.kicker, x, first, lettering, head),
    words(mark ?? '', markAt, second, { ...lettering, ink: head.hand }, head),
    mark === null ? '' : pencil(markAt, second + 9, markWide, head, head),
    words(count, x + width - wide(count, lettering), second, lettering, head),
    title.draw(x, titleTop, width),
    ground === 'outline' && card.title !== ''
      ? strokes(
          `M${x} ${titleTop + title.height(width) + 6}h${width}`,
          { width: 4, ink: head.line },
          head,
        )
      : '',
  ].join('');
}
