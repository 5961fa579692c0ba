import type { EpisodeFigures } from '#lib/figures/episode-figures';
import { figureStatus, type Figure, type FigureStatus } from '#lib/figures/figure';
import { printCount, printTo, roundTo } from '#lib/units/print';

/** Every way in which a value could be printed, from a tenth to its rounding to ten. */
export function printings(value: number): readonly string[] {
  const tens = [5, 10].map((step) => roundTo(value, step));
  const counts = [value, Math.floor(value), Math.ceil(value), ...tens];
  const texts = [
    ...counts.flatMap((each) => [printCount(each), String(Math.round(each))]),
    ...[0.1, 0.01].map((step) => printTo(value, step)),
    String(value),
  ];
  return [...new Set(texts)];
}

/** Printings that no other number of the page could be taken for: three digits and more. */
export function telling(figure: Pick<Figure, 'value'>): readonly string[] {
  return printings(figure.value).filter((text) => text.replace(/\D/g, '').length >= 3);
}

/** Every printing of what is known of an open figure that is no printing of a figure that may be shown. */
export function openNumbers(figures: EpisodeFigures): readonly string[] {
  return numbersOnlyOf(figures, (status) => status === 'open');
}

/** Every printing of an incomplete figure that is no printing of a known one: it stands with "at least" or "at most". */
export function incompleteNumbers(figures: EpisodeFigures): readonly string[] {
  return numbersOnlyOf(figures, (status) => status === 'atLeast' || status === 'atMost');
}

/** The telling printings of the figures of such a status that no figure of another status but open has. */
function numbersOnlyOf(
  figures: EpisodeFigures,
  asked: (status: FigureStatus) => boolean,
): readonly string[] {
  const all = [
    ...Object.values(figures.day),
    ...figures.dishes.flatMap(({ whole, eaten, per100g, portions, lines }) => [
      ...[whole, eaten, per100g ?? {}].flatMap((of) => Object.values(of)),
      ...[...portions, ...lines].flatMap((of) => Object.values(of.figures)),
    ]),
  ];
  const others = all.filter((figure) => {
    const status = figureStatus(figure);
    return !asked(status) && status !== 'open';
  });
  const shown = new Set(
    others.flatMap(({ value, low, high }) =>
      [value, low ?? value, high ?? value].flatMap(printings),
    ),
  );
  const found = all.filter((figure) => asked(figureStatus(figure))).flatMap(telling);
  return [...new Set(found)].filter((text) => !shown.has(text));
}

/** Where a number stands in a text as one of its own, with what stands before it. */
export function places(text: string, number: string): readonly string[] {
  if (!text.includes(number)) return [];
  const escaped = number.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const found = text.matchAll(
    new RegExp(`(.{0,40})(?<![\\w.,#\\-])${escaped}(?!\\w|[.,]\\d)`, 'gs'),
  );
  return [...found].map(([all]) => all);
}
