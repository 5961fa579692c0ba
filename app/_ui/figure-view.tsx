import type { ReactNode } from 'react';
import type { Figure } from '#lib/figures/figure';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { Whisker } from './whisker';

interface Props {
  readonly figure: Figure;
  /** Its published form, so that the page shows what the description says; its own digits if left out. */
  readonly published?: PrintedFigure | undefined;
  /** `large` where the number is the point of the page. */
  readonly size?: 'large' | 'usual';
  readonly note?: ReactNode;
}

/** The list that figures stand in, each named by its nutrient. */
export function FigureList({ children }: { readonly children: ReactNode }) {
  return (
    <dl className="grid grid-cols-2 gap-x-6 gap-y-6 md:flex md:flex-wrap md:gap-x-8">{children}</dl>
  );
}

/** A figure: the number with its unit, its whisker, its range in words. It takes a figure, never a number. */
export function FigureView({ figure, published, size = 'large', note }: Props) {
  const printed = published ?? printFigure(figure);
  return (
    <div className={size === 'large' ? 'md:w-44' : 'md:w-40'}>
      <dt className="lettering text-base text-soft">{printed.label}</dt>
      <dd>
        <Number printed={printed} size={size} />
        <Whisker figure={figure} />
        <span className="mt-1 block text-fine text-soft">{printed.range}</span>
        {note && <span className="block text-fine">{note}</span>}
      </dd>
    </div>
  );
}

function Number({
  printed,
  size,
}: {
  readonly printed: PrintedFigure;
  readonly size: 'large' | 'usual';
}) {
  const digits = size === 'large' ? 'text-figure' : 'text-title';
  if (printed.number === null) {
    return <span className={`block font-bold text-soft ${digits}`}>{printed.text}</span>;
  }
  const words = printed.text.slice(0, -printed.number.length).trim();
  return (
    <span className="flex items-baseline gap-1.5">
      {words && <span className="font-slate text-lead font-semibold">{words}</span>}
      <b className={`font-bold ${digits}`}>{printed.number}</b>
      <span>{printed.unit}</span>
    </span>
  );
}

/** A figure within a line of text or a table: its words and unit, its range on asking. */
export function FigureText({
  figure,
  published,
}: {
  readonly figure: Figure;
  readonly published?: PrintedFigure | undefined;
}) {
  const printed = published ?? printFigure(figure);
  return (
    <span className="whitespace-nowrap" title={printed.range}>
      {printed.number === null ? printed.text : `${printed.text} ${printed.unit}`}
    </span>
  );
}
