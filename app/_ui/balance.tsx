import { balance, type BalanceState } from './geometry';

interface Props {
  readonly verdict: BalanceState;
  /** The verdict in words: "agrees with your breakdown", "off by 7". */
  readonly words: string;
  /** Which side weighs more; what was said, unless the breakdown gives the greater number. */
  readonly heavier?: 'said' | 'breakdown';
}

/** A verdict: a balance beam and its words. It can be read in black and white, and aloud. */
export function Balance({ verdict, words, heavier = 'said' }: Props) {
  const { width, height, left, right, rightPan } = balance(verdict, heavier);
  const pan = (x: number, y: number) => `M${x} ${y}l-6 10h12z`;
  const ink = verdict === 'off' ? 'text-hand' : verdict === 'unknown' ? 'text-soft' : 'text-ink';
  return (
    <span className={`inline-flex items-center gap-2 font-semibold ${ink}`}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className="h-8 w-12 shrink-0"
        fill="none"
        stroke="currentColor"
        strokeWidth="2"
        strokeLinejoin="round"
        aria-hidden="true"
      >
        <path d={`M24 29V9M17 29h14M${left.x} ${left.y}L${right.x} ${right.y}`} />
        <path d={pan(left.x, left.y)} />
        {rightPan ? (
          <path d={pan(right.x, right.y)} />
        ) : (
          <path d={pan(right.x, right.y)} strokeDasharray="1.5 3" strokeLinecap="round" />
        )}
      </svg>
      {words}
    </span>
  );
}
