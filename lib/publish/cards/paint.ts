import { EDGE, type PartInks } from '#lib/publish/cards/inks';
import type { CardNumber } from '#lib/publish/cards/card';
import { onWhisker, type WhiskerEnd } from '#lib/figures/whisker-reach';
import { widthAtMost, xmlText, type Face } from '#lib/publish/picture-text';

const FAMILY: Readonly<Record<Face, string>> = {
  text: 'Atkinson Hyperlegible Next',
  slate: 'Barlow Condensed',
};

/** A line of words on a card. */
export interface Lettering {
  readonly size: number;
  readonly face: Face;
  readonly ink: string;
}

/** Positions in hundredths of a unit. */
const at = (value: number): string => String(Math.round(value * 100) / 100);

/** Words from a point on their baseline to the right. */
export function words(
  text: string,
  x: number,
  y: number,
  { size, face, ink }: Lettering,
  { edge }: Pick<PartInks, 'edge'>,
): string {
  if (text === '') return '';
  const about =
    edge === null
      ? ''
      : ` stroke="${edge}" stroke-width="${at(edgeOf(size))}" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${at(x)}" y="${at(y)}" font-family="${FAMILY[face]}" font-weight="600" font-size="${at(size)}" fill="${ink}"${about}>${xmlText(text)}</text>`;
}

const edgeOf = (size: number): number =>
  Math.min(EDGE.most, Math.max(EDGE.least, size * EDGE.share));

/** How wide words are at most. */
export function wide(text: string, { size, face }: Pick<Lettering, 'size' | 'face'>): number {
  return widthAtMost(text, size, face);
}

/** Lines, as SVG's path data says them; an edge under them on the picture itself. */
export function strokes(
  path: string,
  { width, ink, dotted = false }: { width: number; ink: string; dotted?: boolean },
  { edge }: Pick<PartInks, 'edge'>,
): string {
  const dots = dotted ? ` stroke-dasharray="0 ${at(width * 2.4)}" stroke-linecap="round"` : '';
  const line = (colour: string, thick: number, more: string) =>
    `<path d="${path}" fill="none" stroke="${colour}" stroke-width="${at(thick)}"${more}/>`;
  const under = edge === null ? '' : line(edge, width + EDGE.least, ' stroke-linecap="square"');
  return under + line(ink, width, dots);
}

/** A filled box. */
export function box(
  x: number,
  y: number,
  width: number,
  height: number,
  fill: string,
  opacity: number,
): string {
  return `<rect x="${at(x)}" y="${at(y)}" width="${at(width)}" height="${at(height)}" fill="${fill}" fill-opacity="${opacity}"/>`;
}

/** The clapper's stripes over a width, leaning to the right; nothing stands outside of it. */
export function stripes(
  x: number,
  y: number,
  width: number,
  height: number,
  fill: string,
  opacity: number,
): string {
  const [step, lean] = [64, height];
  const count = Math.ceil((width + lean) / step);
  const parts = Array.from({ length: count }, (_, index) => {
    const clamp = (value: number) => at(Math.min(x + width, Math.max(x, value)));
    const from = x + index * step;
    const to = from + step / 2;
    return `M${clamp(from)} ${at(y + height)}L${clamp(from + lean)} ${at(y)}L${clamp(to + lean)} ${at(y)}L${clamp(to)} ${at(y + height)}Z`;
  });
  return `<path d="${parts.join('')}" fill="${fill}" fill-opacity="${opacity}"/>`;
}

/** How high a whisker is, from the upper end of its tick to the lower. */
export const WHISKER_HEIGHT = 24;

/**
 * A number's whisker on the common scale: a hairline to the hard bound with its ends, a bar to the likely one, a tick at
 * the value. An open number has a dotted line.
 */
export function whiskerMarks(
  { whisker }: Pick<CardNumber, 'whisker'>,
  x: number,
  y: number,
  width: number,
  inks: PartInks,
): string {
  const middle = y + WHISKER_HEIGHT / 2;
  if (whisker === null) {
    const path = `M${at(x)} ${at(middle)}h${at(width)}`;
    return strokes(path, { width: 4, ink: inks.soft, dotted: true }, inks);
  }
  const { value, low, high, likelyLow, likelyHigh } = whisker;
  const place = (share: number) => x + ((share + 1) / 2) * width;
  const span = (bound: { from: WhiskerEnd; to: WhiskerEnd }) =>
    `M${at(place(bound.from.at))} ${at(middle)}H${at(place(bound.to.at))}`;
  const hard = onWhisker(value, low, high);
  const ends = [hard.from, hard.to]
    .filter(({ end }) => end === 'bound')
    .map((end) => `M${at(place(end.at))} ${at(middle - 7)}v14`);
  const known = likelyLow !== null && likelyHigh !== null;
  return [
    strokes(span(hard) + ends.join(''), { width: 3, ink: inks.ink }, inks),
    known
      ? strokes(span(onWhisker(value, likelyLow, likelyHigh)), { width: 8, ink: inks.ink }, inks)
      : '',
    strokes(`M${at(place(0))} ${at(y)}v${WHISKER_HEIGHT}`, { width: 4, ink: inks.ink }, inks),
  ].join('');
}

/** A line drawn by hand under or through words: a little off level, thicker than a ruled one. */
export function pencil(
  x: number,
  y: number,
  width: number,
  { hand }: Pick<PartInks, 'hand'>,
  inks: Pick<PartInks, 'edge'>,
): string {
  const path = `M${at(x)} ${at(y + 2)}C${at(x + width * 0.3)} ${at(y - 4)} ${at(x + width * 0.6)} ${at(y + 5)} ${at(x + width)} ${at(y - 2)}`;
  return strokes(path, { width: 6, ink: hand }, inks);
}
