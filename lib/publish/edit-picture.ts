import { wrapped, xmlText, type Face } from '#lib/publish/picture-text';

/** Inks and grounds of a picture, by their roles. */
export interface PictureColours {
  readonly paper: string;
  readonly raised: string;
  readonly ink: string;
  readonly soft: string;
  readonly hand: string;
  readonly line: string;
  readonly slate: string;
  readonly chalk: string;
  readonly chalkSoft: string;
}

export type PictureVerdict = 'off' | 'edge' | 'agrees' | 'unknown';

/** The balance of a verdict: its strokes in a box of 48 by 30, and those that are only dotted. */
export interface PictureBeam {
  readonly strokes: string;
  readonly dotted: string;
}

/** What the picture of a result shows. */
export interface EditResult {
  readonly title: string;
  /** The day on which it was made, as read. */
  readonly on: string;
  readonly counts: Readonly<Record<PictureVerdict, number>>;
  /** What is off, the first in time first. */
  readonly off: readonly {
    readonly place: string;
    readonly words: string;
    readonly verdict: string;
    readonly sayInstead: string | null;
  }[];
  readonly contradictions: number;
  /** Foods that are named and not counted, and not answered. */
  readonly named: number;
}

export const PICTURE = { width: 1080, height: 1350 } as const;
const SIDE = 72;
const INSIDE = PICTURE.width - 2 * SIDE;
/** Rows of what is off that have room. */
const ROWS = 5;
const ROW_HEIGHT = 128;

const WORDS: Readonly<Record<PictureVerdict, string>> = {
  off: 'off',
  edge: 'at the edge',
  agrees: 'agree',
  unknown: 'can’t say',
};
const ORDER: readonly PictureVerdict[] = ['off', 'edge', 'agrees', 'unknown'];

const CAUTION =
  'Held against the creator’s own breakdown. It never says that a number is true. Figures are for information, not dietary or medical advice.';

/**
 * The result of an edit as one picture, as SVG text: a slate with the title, how many statements stand how, and the
 * first that are off with what to say instead. All text lies within the picture.
 * @example editPicture(result, colours, beams) // '<svg xmlns="http://www.w3.org/2000/svg" width="1080" …'
 */
export function editPicture(
  result: EditResult,
  colours: PictureColours,
  beams: Readonly<Record<PictureVerdict, PictureBeam>>,
): string {
  const { width, height } = PICTURE;
  const parts = [
    `<rect width="${width}" height="${height}" fill="${colours.paper}"/>`,
    slate(result, colours),
    ...ORDER.map((verdict, at) => count(result, verdict, at, colours, beams[verdict])),
    offPart(result, colours),
    foot(result, colours),
  ];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${parts.join('')}</svg>`;
}

interface Written {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly fill: string;
  readonly face?: Face;
  readonly weight?: 400 | 600;
  readonly width?: number;
  readonly mostLines?: number;
}

/** Lines of words, each under the other. */
function text(words: string, { x, y, size, fill, face = 'text', ...rest }: Written): string {
  const { weight = face === 'slate' ? 600 : 400, width = INSIDE, mostLines = 1 } = rest;
  const family = face === 'slate' ? 'Barlow Condensed' : 'Atkinson Hyperlegible Next';
  const leading = size * (face === 'slate' ? 1.05 : 1.3);
  return wrapped(words, { size, face, width, mostLines })
    .map(
      (line, at) =>
        `<text x="${x}" y="${y + at * leading}" font-family="${family}" font-weight="${weight}" font-size="${size}" fill="${fill}">${xmlText(line)}</text>`,
    )
    .join('');
}

function slate(
  { title, on }: EditResult,
  { slate: ground, chalk, chalkSoft, paper }: PictureColours,
) {
  const stripes = Array.from({ length: 14 }, (_, at) => {
    const x = at * 88 - 40;
    return `<path d="M${x} 40l18-40h44l-18 40z" fill="${chalk}"/>`;
  });
  return [
    `<rect width="${PICTURE.width}" height="296" fill="${ground}"/>`,
    ...stripes,
    `<path d="M0 41h${PICTURE.width}" stroke="${paper}" stroke-width="2"/>`,
    text(`The edit, ${on}`, { x: SIDE, y: 106, size: 30, fill: chalkSoft, face: 'slate' }),
    text(title, { x: SIDE, y: 176, size: 68, fill: chalk, face: 'slate', mostLines: 2 }),
  ].join('');
}

function count(
  { counts }: EditResult,
  verdict: PictureVerdict,
  at: number,
  { ink, soft, hand }: PictureColours,
  { strokes, dotted }: PictureBeam,
): string {
  const x = SIDE + at * (INSIDE / ORDER.length);
  const colour = verdict === 'off' ? hand : verdict === 'unknown' ? soft : ink;
  const drawn = `fill="none" stroke="${colour}" stroke-width="2" stroke-linejoin="round"`;
  return [
    `<g transform="translate(${x - 6} 330) scale(1.9)" ${drawn}><path d="${strokes}"/>`,
    `<path d="${dotted}" stroke-dasharray="1.5 3" stroke-linecap="round"/></g>`,
    text(String(counts[verdict]), { x, y: 470, size: 84, fill: colour, weight: 600, width: 220 }),
    text(WORDS[verdict], { x, y: 512, size: 32, fill: colour, face: 'slate', width: 220 }),
  ].join('');
}

function offPart({ off }: EditResult, colours: PictureColours): string {
  const { ink, soft, hand, line } = colours;
  const top = 566;
  const rule = `<path d="M${SIDE} ${top}h${INSIDE}" stroke="${ink}" stroke-width="3"/>`;
  if (off.length === 0) {
    const words = 'Nothing that was said is off.';
    return rule + text(words, { x: SIDE, y: top + 64, size: 40, fill: ink, weight: 600 });
  }
  const rows = off.slice(0, ROWS).map(({ place, words, verdict, sayInstead }, at) => {
    const y = top + at * ROW_HEIGHT;
    const say = sayInstead === null ? verdict : `${verdict}. Say: ${sayInstead}`;
    return [
      text(place, { x: SIDE, y: y + 46, size: 28, fill: soft, face: 'slate', width: 150 }),
      text(`“${words}”`, { x: SIDE + 166, y: y + 48, size: 32, fill: ink, width: INSIDE - 166 }),
      text(say, {
        ...{ x: SIDE + 166, y: y + 92, size: 30, fill: hand },
        ...{ weight: 600 as const, width: INSIDE - 166 },
      }),
      `<path d="M${SIDE} ${y + ROW_HEIGHT}h${INSIDE}" stroke="${line}" stroke-width="2"/>`,
    ].join('');
  });
  return rule + rows.join('');
}

function foot({ off, contradictions, named }: EditResult, { ink, soft }: PictureColours): string {
  const more = off.length > ROWS ? [`${off.length - ROWS} more that are off`] : [];
  const two =
    contradictions === 0
      ? []
      : [contradictions === 1 ? '1 contradiction' : `${contradictions} contradictions`];
  const foods =
    named === 0 ? [] : [`${named} ${named === 1 ? 'food' : 'foods'} named, not counted`];
  return [
    text([...more, ...two, ...foods].join(' · '), {
      ...{ x: SIDE, y: 1250, size: 32, fill: ink },
      face: 'slate',
    }),
    text(CAUTION, { x: SIDE, y: 1294, size: 20, fill: soft, mostLines: 2 }),
  ].join('');
}
