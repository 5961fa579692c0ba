/** How many numbers are asked of the machine at a time: the rows of ten dishes or so. */
const SHEET = 8192;

let sheet = new ArrayBuffer(0);
let next = 0;

/**
 * A row of zeros. Rows are cut from one sheet, side by side: asking for each by itself costs more than what is then
 * added up in it, and as much again when it is cleared away. A sheet is cleared away with the last of its rows.
 */
export function zeroRow(length: number): Float64Array {
  const bytes = length * Float64Array.BYTES_PER_ELEMENT;
  if (next + bytes > sheet.byteLength) {
    sheet = new ArrayBuffer(Math.max(bytes, SHEET * Float64Array.BYTES_PER_ELEMENT));
    next = 0;
  }
  const row = new Float64Array(sheet, next, length);
  next += bytes;
  return row;
}
