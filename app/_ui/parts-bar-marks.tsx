import {
  hatchLines,
  textureLines,
  type Box,
  type BarLabel,
  type BarLimit,
  type BarPiece,
  type BarRange,
  type PartsBarDrawing,
} from './bar-geometry';

/** The drawing of a bar of parts; all that it says stands in words beside it. */
export function PartsBarMarks({ drawing }: { readonly drawing: PartsBarDrawing }) {
  const { width, height, left, right, pieces, open, range, limits, labels } = drawing;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      className="absolute top-0 left-0"
      style={{ width: `${width / 16}rem`, height: `${height / 16}rem` }}
      fill="none"
      stroke="currentColor"
      aria-hidden="true"
    >
      {pieces.map((piece) => (
        <Piece key={piece.key} piece={piece} left={left} right={right} />
      ))}
      {open && <Open top={open.top} bottom={open.bottom} left={left} right={right} />}
      {limits.map((limit) => (
        <Limit key={limit.key} limit={limit} left={left} right={right} />
      ))}
      {range && <Range range={range} x={7} />}
      {labels.map((label) => (
        <Leader key={label.key} label={label} from={right} to={width} />
      ))}
    </svg>
  );
}

interface Edges {
  readonly left: number;
  readonly right: number;
}

const LINE_STEP = 5;

function Piece({ piece, left, right }: Edges & { readonly piece: BarPiece }) {
  const { top, bottom, texture } = piece;
  const frame = `M${left} ${top}H${right}V${bottom}H${left}Z`;
  const lines = textureLines(piece, LINE_STEP)
    .map((y) => `M${left + 2.5} ${y}H${right - 1}`)
    .join('');
  const upright = textureLines({ top: left, bottom: right }, LINE_STEP)
    .map((x) => `M${x} ${top}V${bottom}`)
    .join('');
  return (
    <>
      <path
        d={frame}
        fill={texture === 'solid' ? 'currentColor' : 'none'}
        strokeWidth="1.5"
        strokeDasharray={texture === 'rest' ? '3 3' : undefined}
      />
      {texture === 'upright' && <path d={upright} strokeWidth="1" />}
      {texture === 'grain' && (
        <path d={lines} strokeWidth="2" strokeLinecap="round" strokeDasharray="0 5" />
      )}
      {texture === 'bricks' && <path d={lines} strokeWidth="3" strokeDasharray="5 2.5" />}
    </>
  );
}

/** What nobody knows: hatched as all that is open, with a dashed edge. */
function Open(box: Box) {
  const { left, right, top, bottom } = box;
  const lines = hatchLines(box, 6)
    .map(({ x1, y1, x2, y2 }) => `M${x1} ${y1}L${x2} ${y2}`)
    .join('');
  return (
    <>
      <path d={`M${left} ${bottom}V${top}M${right} ${bottom}V${top}`} strokeDasharray="2 3" />
      <path d={lines} className="stroke-edge" />
    </>
  );
}

/** The range on a scale beside the bar: as a whisker that stands upright. */
function Range({ range, x }: { readonly range: BarRange; readonly x: number }) {
  const { value, likely, hard } = range;
  const end = hard.cut ? `M${x - 4} ${hard.top + 5}l4 -5l4 5` : `M${x - 4} ${hard.top}h8`;
  return (
    <>
      <path
        d={`M${x} ${hard.top}V${hard.bottom}M${x - 4} ${hard.bottom}h8${end}`}
        strokeWidth="1.25"
      />
      <path d={`M${x} ${likely.top}V${likely.bottom}`} strokeWidth="4.5" />
      <path d={`M${x - 6} ${value}h12`} strokeWidth="2.5" />
    </>
  );
}

/** A target across the bar, with arrows into the side that meets it. */
function Limit({ limit, left, right }: Edges & { readonly limit: BarLimit }) {
  const { y, allows } = limit;
  const x = right + 5;
  const arrow = (side: 1 | -1) =>
    `M${x - 3} ${y + 6 * side}l3 ${4 * side}l3 ${-4 * side}M${x} ${y}v${10 * side}`;
  return (
    <>
      <path d={`M${left} ${y}H${right}`} className="stroke-paper" strokeWidth="6" />
      <path d={`M0 ${y}H${right + 8}`} strokeWidth="2.5" />
      {allows !== 'above' && <path d={arrow(1)} strokeWidth="1.25" />}
      {allows !== 'below' && <path d={arrow(-1)} strokeWidth="1.25" />}
    </>
  );
}

function Leader({
  label,
  from,
  to,
}: {
  readonly label: BarLabel;
  readonly from: number;
  readonly to: number;
}) {
  return (
    <path
      d={`M${from + 1} ${label.from}L${to - 7} ${label.to}H${to - 3}`}
      className="stroke-edge"
      strokeWidth="1"
    />
  );
}
