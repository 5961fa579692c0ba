/** RFC 5545, 3.1: a line should hold at most 75 octets, without its line break. */
const MOST_OCTETS = 75;

const encoder = new TextEncoder();

/**
 * A content line folded by RFC 5545, 3.1: pieces of at most 75 octets of UTF-8, joined by CRLF and a
 * space; no character is split. Every piece counts its own content only, so unfolding (removing
 * each CRLF and the space after it) gives the line back.
 *
 * @example 160 letters → pieces of 75, 74 and 11 octets (the space before the second and third counts)
 */
export function foldLine(line: string): string {
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    // Every piece but the first has one octet less: the space that marks it.
    const room = pieces.length === 0 ? MOST_OCTETS : MOST_OCTETS - 1;
    if (octets + size > room) {
      pieces.push(piece);
      piece = '';
      octets = 0;
    }
    piece += character;
    octets += size;
  }
  pieces.push(piece);
  return pieces.join('\r\n ');
}

/**
 * A whole calendar file with every line unfolded and folded anew, ending in CRLF. The generator folds
 * one octet early and counts the marking space differently.
 */
export function refold(file: string): string {
  return `${file
    .replaceAll('\r\n ', '')
    .split('\r\n')
    .filter((line) => line !== '')
    .map(foldLine)
    .join('\r\n')}\r\n`;
}

/** Text without the control characters that RFC 5545, 3.3.11 forbids; line breaks and tabs stay. */
export function calendarText(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
    .trim();
}
