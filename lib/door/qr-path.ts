import { create } from 'qrcode';

/** A QR code as one path of unit squares, with the four modules of quiet around it that ISO/IEC 18004 asks for (from memory). */
export interface QrPath {
  /** Width and height of the drawing, in modules. */
  readonly size: number;
  readonly path: string;
}

const QUIET = 4;

/** Draws a text as a QR code with medium error correction: a seventh of it may be unreadable. */
export function qrPath(text: string): QrPath {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules;
  let path = '';
  for (let at = 0; at < size * size; at += 1) {
    if (data[at]) path += `M${QUIET + (at % size)} ${QUIET + Math.floor(at / size)}h1v1h-1z`;
  }
  return { size: size + 2 * QUIET, path };
}
