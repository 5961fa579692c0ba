import { markName, type TakeMark } from '#lib/cut/take-marks';
import { printTimecode, type FrameRate } from '#lib/cut/timecode';

/** An edit decision list of this kind numbers its events in three digits. */
export const MOST_EVENTS = 999;
const TITLE_MAX = 70;

/**
 * Takes as an edit decision list in the form CMX 3600 (from memory: title, frame code mode, then for each event its
 * number, reel, track, cut, source in and out, record in and out, out being the first frame after it). Each take is an
 * event of one frame at its end, recorded at its own timecode, so that it stands as a mark; what it is stands in
 * comments. ASCII alone, LF. Of more takes than fit a comment says how many are left out.
 */
export function takesEdl(title: string, marks: readonly TakeMark[], rate: FrameRate): string {
  const fitting = marks.slice(0, MOST_EVENTS);
  const left = marks.length - fitting.length;
  const lines = [
    `TITLE: ${plain(title).slice(0, TITLE_MAX)}`,
    `FCM: ${rate.drop > 0 ? 'DROP FRAME' : 'NON-DROP FRAME'}`,
    `* FRAMES A SECOND: ${rate.num}/${rate.den}`,
    ...fitting.flatMap((mark, index) => event(mark, index + 1, rate)),
    ...(left > 0 ? [`* ${left} TAKES MORE STAND IN THE TABLE ALONE`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

function event(mark: TakeMark, number: number, rate: FrameRate): string[] {
  const span = [mark.timecode, printTimecode(mark.frame + 1, rate)].join(' ');
  const said = [
    mark.segment,
    [mark.shot, mark.framing].filter(Boolean).join(', '),
    `ended at ${mark.clock}`,
    mark.note,
  ];
  return [
    `${String(number).padStart(3, '0')}  AX       V     C        ${span} ${span}`,
    `* FROM CLIP NAME: ${plain(markName(mark))}`,
    ...said.filter(Boolean).map((text) => `* COMMENT: ${plain(text)}`),
  ];
}

const MARKS: Readonly<Record<string, string>> = {
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '–': '-',
  '—': '-',
  '…': '...',
  '°': ' deg ',
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
};

/** One line of ASCII: letters without their accents, a question mark for what has no other form. */
function plain(text: string): string {
  return [...text.normalize('NFKD')]
    .map((sign) => (/\p{M}/u.test(sign) ? '' : (MARKS[sign] ?? sign)))
    .join('')
    .replace(/\s+/g, ' ')
    .replace(/[^ -~]/g, '?')
    .trim();
}
