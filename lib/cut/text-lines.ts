/** The lines of a text, whichever of LF, CRLF or CR ends them. `linesOf('a\r\nb')` → `['a', 'b']` */
export function linesOf(text: string): string[] {
  return text.split(/\r\n|\n|\r/);
}
