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
  /** Under a number in a table, where the scale behind it would be too fine to see. */
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
          {!small && (
            <path
              d={drawing.graduations.map((x) => `M${x} ${height - 3}v3`).join('')}
              className="stroke-edge"
            />
          )}
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

/** The line from bound to bound: an end stroke at a bound, an arrow where it goes on, dashes where it is free. */
function Hairline({ span, middle }: { readonly span: WhiskerSpan; readonly middle: number }) {
  const { from, to, fromEnd, toEnd } = span;
  const line = `M${from} ${middle}H${to}`;
  const ends = [
    fromEnd === 'bound' && `M${from} ${middle - 4}v8`,
    toEnd === 'bound' && `M${to} ${middle - 4}v8`,
    fromEnd === 'cut' && `M${from + 5} ${middle - 4}l-5 4l5 4`,
    toEnd === 'cut' && `M${to - 5} ${middle - 4}l5 4l-5 4`,
  ].filter((end) => end !== false);
  const free = fromEnd === 'free' || toEnd === 'free';
  // Every table draws dozens: as few elements as will do.
  return free ? (
    <>
      <path d={line} strokeDasharray="4 4" strokeWidth="1.25" />
      <path d={ends.join('')} strokeWidth="1.25" />
    </>
  ) : (
    <path d={line + ends.join('')} strokeWidth="1.25" />
  );
}
