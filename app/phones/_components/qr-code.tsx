import { qrPath } from '#lib/door/qr-path';
import { DAY } from '../../_ui/palette';

/** A text as a QR code, dark on light by night too: many cameras read no other. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { size, path } = qrPath(text);
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
      className="block w-full max-w-64"
    >
      <rect width={size} height={size} fill={DAY.raised} />
      <path d={path} fill={DAY.ink} />
    </svg>
  );
}
