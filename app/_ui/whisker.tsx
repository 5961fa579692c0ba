import type { Figure } from '#lib/figures/figure';
import { whisker, type WhiskerSpan } from './geometry';

/**
 * A figure's range as a scale mark: a hairline for what the digits allow, a bar for what is likely,
 * a tick at the value. Said in words beside it, so it is hidden from what reads aloud.
 */
export function Whisker({
  figure,
  small = false,
}: {
  readonly figure: Pick<Figure, 'value' | 'low' | 'high' | 'likelyLow' | 'likelyHigh'>;
  /** Under a number in a table. */
  readonly small?: boolean;
}) {
  const drawing = whisker(figure);
  const { width, height } = drawing;
  const middle = height / 2;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      className={small ? 'inline-block h-2 w-16 print:w-12' : 'block h-4 w-40 max-w-full'}
      fill="none"
      stroke="currentColor"
      aria-hidden="true"
    >
      {drawing.tick === null ? (
        <path
          d={`M6 ${middle}H${width - 6}`}
          strokeDasharray="1 5"
          strokeLinecap="round"
          strokeWidth="2"
        />
      ) : (
        <>
          <path
            d={drawing.graduations.map((x) => `M${x} ${height - 3}v3`).join('')}
            className="stroke-edge"
          />
          {drawing.hard && <Hairline span={drawing.hard} middle={middle} />}
          {drawing.likely && (
            <path d={`M${drawing.likely.from} ${middle}H${drawing.likely.to}`} strokeWidth="4.5" />
          )}
          <path d={`M${drawing.tick} 0V${height}`} strokeWidth="2.5" />
        </>
      )}
    </svg>
  );
}

function Hairline({ span, middle }: { readonly span: WhiskerSpan; readonly middle: number }) {
  const dashes = span.fromEnd === 'free' || span.toEnd === 'free' ? '4 4' : undefined;
  return (
    <>
      <path d={`M${span.from} ${middle}H${span.to}`} strokeDasharray={dashes} strokeWidth="1.25" />
      {span.fromEnd === 'bound' && <path d={`M${span.from} ${middle - 4}v8`} strokeWidth="1.25" />}
      {span.toEnd === 'bound' && <path d={`M${span.to} ${middle - 4}v8`} strokeWidth="1.25" />}
      {span.fromEnd === 'cut' && <path d={`M${span.from + 5} ${middle - 4}l-5 4l5 4`} />}
      {span.toEnd === 'cut' && <path d={`M${span.to - 5} ${middle - 4}l5 4l-5 4`} />}
    </>
  );
}
