import { decodeText, type DecodedText } from '#lib/cut/decode-text';
import { MOST_TEXT } from '#lib/episode/edit-schema';
import { failed, ok, type Result } from '#lib/result';
import { printCount } from '#lib/units/print';
import { LARGEST_FILE } from './largest-file';

/** What was pasted, or the file that was chosen, as text. */
export interface TakenText {
  readonly text: string;
  /** The file's name, or nothing where it was pasted. */
  readonly name: string;
  /** How a file was read, where it did not say so itself. */
  readonly told: string;
}

const ENCODINGS: Readonly<Record<DecodedText['encoding'], string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Western European (Windows-1252)',
};

/**
 * The file of a form; null where none was chosen. A browser then sends an empty one, whose name is lost on the way or
 * becomes some word: an empty file that somebody did choose is known by its name's ending.
 */
export function chosenFile(form: FormData): File | null {
  const file = form.get('file');
  return file instanceof File && (file.size > 0 || /\.\w+$/.test(file.name)) ? file : null;
}

/** The text of a form: its file if one was chosen, else what was pasted. Says what it can't take, and why. */
export async function takeText(form: FormData, pasted: string): Promise<Result<TakenText>> {
  const file = chosenFile(form);
  if (!file) {
    // A browser sends its line ends as CRLF.
    return checked({ text: pasted.replace(/\r\n?/g, '\n'), name: '', told: '' }, 'text');
  }
  if (file.size > LARGEST_FILE) return tooLong(`${printCount(file.size)} bytes`, 'file');
  const { text, encoding, certain } = decodeText(new Uint8Array(await file.arrayBuffer()));
  // A form that was refused shows the file's words in its field, and the browser still holds the file.
  if (pasted.trim() !== '' && plain(pasted) !== plain(text)) return TWO;
  const told = certain
    ? ''
    : ` The file does not name its text encoding and was read as ${ENCODINGS[encoding]}: check that accents are right.`;
  return checked({ text, name: file.name, told }, 'file');
}

const plain = (text: string) => text.replace(/\r\n?/g, '\n').trim();

const TWO = failed({
  path: 'file',
  code: 'two',
  message:
    'A text was pasted and a file was chosen, and only one of them can be taken: empty the field, or choose the file no more.',
});

function checked(taken: TakenText, path: 'text' | 'file'): Result<TakenText> {
  const { text } = taken;
  if (text.trim() === '') {
    const message =
      path === 'file' ? 'There are no words in this file.' : 'Paste the text, or choose a file.';
    return failed({ path, code: 'empty', message });
  }
  if (text.length > MOST_TEXT) return tooLong(`${printCount(text.length)} characters`, path);
  if (text.includes('\0')) {
    const message =
      'This is no text: choose the captions, the transcript or the description itself.';
    return failed({ path, code: 'no-text', message });
  }
  return ok(taken);
}

function tooLong(size: string, path: string): Result<never> {
  const message = `This holds ${size}, and a text may have up to ${printCount(MOST_TEXT)} characters. Captions of two hours have some two hundred thousand: is it the right file?`;
  return failed({ path, code: 'too-long', message });
}
