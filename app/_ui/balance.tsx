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
  const ink = verdict === 'off' ? 'text-hand' : verdict === 'unknown' ? 'text-soft' : 'text-ink';
  return (
    <span className={`inline-flex items-center gap-2 font-semibold ${ink}`}>
      <BalanceMark verdict={verdict} heavier={heavier} />
      {words}
    </span>
  );
}

/** The beam alone, where its words stand beside it in another way; `small` on a strip and on a button. */
export function BalanceMark({
  verdict,
  heavier = 'said',
  small = false,
}: Pick<Props, 'verdict' | 'heavier'> & { readonly small?: boolean }) {
  const { width, height, left, right, rightPan } = balance(verdict, heavier);
  const pan = (x: number, y: number) => `M${x} ${y}l-6 10h12z`;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      className={small ? 'h-4 w-6 shrink-0' : 'h-8 w-12 shrink-0'}
      fill="none"
      stroke="currentColor"
      strokeWidth={small ? '3.5' : '2'}
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={`M24 29V9M17 29h14M${left.x} ${left.y}L${right.x} ${right.y}`} />
      <path d={pan(left.x, left.y)} fill={small && verdict === 'off' ? 'currentColor' : 'none'} />
      {rightPan ? (
        <path d={pan(right.x, right.y)} />
      ) : (
        <path d={pan(right.x, right.y)} strokeDasharray="1.5 3" strokeLinecap="round" />
      )}
    </svg>
  );
}
