import Link from 'next/link';
import type { ReactNode } from 'react';
import type { Figure } from '#lib/figures/figure';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { provisionalKinds } from '#lib/figures/provisional-words';
import { Provisional } from './provisional';
import { Whisker } from './whisker';

export type FigureSize = 'lead' | 'large' | 'usual';

/** A published number says itself where it adds up only because of rounding. */
type Published = PrintedFigure & {
  readonly onlyByRounding?: boolean;
  readonly said?: { readonly words: string; readonly outside: boolean } | null;
};

interface Props {
  readonly figure: Figure;
  /** Its published form, so that the page shows what the description says; its own digits if left out. */
  readonly published?: Published | undefined;
  /** `lead` for the one number the episode is about, `large` where numbers are the point of the page. */
  readonly size?: FigureSize;
  readonly note?: ReactNode;
  /** Address of its breakdown, to which all of it leads. */
  readonly href?: string | undefined;
}

/** The list that figures stand in, each named by its nutrient. */
export function FigureList({ children }: { readonly children: ReactNode }) {
  return (
    <dl className="grid grid-cols-2 gap-x-6 gap-y-6 md:flex md:flex-wrap md:items-end md:gap-x-5">
      {children}
    </dl>
  );
}

/**
 * A figure: the number with its unit, its whisker, its range in words. It takes a figure, never a number, and
 * leads to its breakdown, open or not.
 */
export function FigureView({ figure, published, size = 'large', note, href }: Props) {
  const printed = published ?? printFigure(figure);
  const waits = provisionalKinds(figure);
  const number = (
    <>
      <Number printed={printed} size={size} />
      <Whisker figure={figure} />
    </>
  );
  const shown = (
    <>
      {waits.length > 0 ? (
        <Provisional
          words={waits.map(({ words }) => words).join('; ')}
          what={waitingWords(waits.flatMap(({ texts }) => texts))}
        >
          {number}
        </Provisional>
      ) : (
        number
      )}
      <span className={`mt-1 text-fine text-soft ${href === undefined ? 'block' : RANGE_LINK}`}>
        {printed.range}
      </span>
    </>
  );
  return (
    <div className={`md:self-start ${WIDTHS[size]}`}>
      <dt className="lettering text-base text-soft">{printed.label}</dt>
      <dd>
        {href === undefined ? (
          shown
        ) : (
          <Link href={href} prefetch={false} className="group block">
            {shown}
            <To label={printed.label} />
          </Link>
        )}
        {published?.onlyByRounding && <span className="block text-fine">{ONLY_BY_ROUNDING}</span>}
        {published?.said && <Said {...published.said} />}
        {note && <span className="block text-fine">{note}</span>}
      </dd>
    </div>
  );
}

/** The range carries the line of the link; the number over it stays clear. */
const RANGE_LINK = 'link inline-block group-hover:decoration-ink';

const ONLY_BY_ROUNDING = 'adds up only because of rounding';

/** What was said of a number in front of the camera, and whether its sources still allow it. */
function Said({ words, outside }: { readonly words: string; readonly outside: boolean }) {
  return (
    <span className={`block text-fine ${outside ? 'font-semibold text-hand' : ''}`}>
      {words}
      {outside && `, ${OUTSIDE}`}
    </span>
  );
}

const OUTSIDE = 'outside its range';

/** Where a number leads, for what reads aloud. */
function To({ label }: { readonly label: string }) {
  return <span className="unseen"> {label}, breakdown</span>;
}

/** Which foods wait: by name where they are few, since they are listed where they are confirmed. */
function waitingWords(texts: readonly string[]): string {
  return texts.length <= 2 ? texts.join(', ') : `${texts.length} foods`;
}

const WIDTHS: Readonly<Record<FigureSize, string>> = {
  lead: 'md:w-48',
  large: 'md:flex-[1_1_9.5rem] md:max-w-44',
  usual: 'md:flex-[1_1_9.5rem] md:max-w-40',
};
const DIGITS: Readonly<Record<FigureSize, string>> = {
  lead: 'text-[2.75rem] leading-none md:text-clock',
  large: 'text-figure',
  usual: 'text-title',
};

function Number({ printed, size }: { readonly printed: PrintedFigure; readonly size: FigureSize }) {
  const digits = `proportional-nums ${DIGITS[size]}`;
  if (printed.number === null) {
    return <span className={`block font-bold text-soft ${digits}`}>{printed.text}</span>;
  }
  const words = printed.text.slice(0, -printed.number.length).trim();
  return (
    <span
      className={`flex flex-wrap content-end items-baseline gap-x-1.5 ${size === 'large' ? 'min-h-11 md:min-h-14' : ''}`}
    >
      {words && <span className="font-slate text-lead font-semibold">{words}</span>}
      <b className={`font-bold ${digits}`}>{printed.number}</b>
      <span>{printed.unit}</span>
    </span>
  );
}

interface TextProps {
  readonly figure: Figure;
  readonly published?: Published | undefined;
  /** Address of its breakdown. */
  readonly href?: string | undefined;
  /** Draws the whisker under it, in a table. */
  readonly whisker?: boolean;
}

/** A figure within a line of text or a table: its words and unit, its range on asking or as a whisker. */
export function FigureText({ figure, published, href, whisker = false }: TextProps) {
  const printed = published ?? printFigure(figure);
  const words = printed.number === null ? printed.text : `${printed.text} ${printed.unit}`;
  const number = (
    <>
      {words}
      {published?.onlyByRounding && <RoundingMark />}
      {published?.said?.outside && <SaidMark words={published.said.words} />}
    </>
  );
  const waits = provisionalKinds(figure).map(({ words: why }) => why);
  const shown =
    waits.length > 0 ? (
      <Provisional inline words={waits.join('; ')}>
        {number}
      </Provisional>
    ) : (
      number
    );
  return (
    <span className={`whitespace-nowrap ${whisker ? 'inline-block' : ''}`} title={printed.range}>
      {href === undefined ? (
        shown
      ) : (
        <Link
          href={href}
          prefetch={false}
          className={`link ${whisker ? 'inline-block min-h-6' : ''}`}
        >
          {shown}
          <To label={printed.label} />
        </Link>
      )}
      {whisker && (
        <span className="block leading-none">
          <Whisker figure={figure} small />
        </span>
      )}
    </span>
  );
}

/** The star at a number within a text or a table, which says at its end what it means. */
function RoundingMark() {
  return (
    <span title={ONLY_BY_ROUNDING}>
      <span aria-hidden="true">*</span>
      <span className="unseen">, {ONLY_BY_ROUNDING}</span>
    </span>
  );
}

/** The dagger at a number whose sources do not allow what was said of it. */
function SaidMark({ words }: { readonly words: string }) {
  return (
    <span title={`${words}, ${OUTSIDE}`}>
      <span aria-hidden="true">†</span>
      <span className="unseen">
        , {words}, {OUTSIDE}
      </span>
    </span>
  );
}
