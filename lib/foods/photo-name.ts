import { PHOTO_ENDING, type PhotoMime } from '#lib/foods/photo-kinds';

/** The longest name that is kept, in characters. */
const LONGEST = 80;

/** Control characters, and marks that turn the direction of what is read. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/gu;

/**
 * A photo's name as it is kept and shown: that of the file without folders, unseen marks and its ending,
 * which its bytes say better. A name of nothing is 'panel'.
 * @example photoName('C:\\fakepath\\IMG_0042.JPEG.exe', 'image/jpeg') // 'IMG_0042.JPEG.jpg'
 */
export function photoName(given: string, mime: PhotoMime): string {
  const last = given.split(/[/\\]/).at(-1) ?? '';
  const plain = last
    .replace(UNSEEN, '')
    .replace(/\.[^.]*$/, '')
    .replace(/[<>:"|?*\s]+/g, ' ')
    .trim();
  const cut = [...plain].slice(0, LONGEST).join('').replace(/^\.+/, '').trim();
  return `${cut || 'panel'}.${PHOTO_ENDING[mime]}`;
}

/**
 * The header Content-Disposition of a photo that is shown in place: the name in plain letters, and after it
 * the whole name (RFC 6266, 4.3; RFC 8187, 3.2.1).
 * @example shownAs('Müsli.jpg') // `inline; filename="M_sli.jpg"; filename*=UTF-8''M%C3%BCsli.jpg`
 */
export function shownAs(name: string): string {
  const plain = name.replace(/[^A-Za-z0-9 ._-]/g, '_');
  const whole = encodeURIComponent(name).replace(
    /['()*]/g,
    (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `inline; filename="${plain}"; filename*=UTF-8''${whole}`;
}
