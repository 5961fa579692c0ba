/** An address with nothing in it that ends it early. */
export function linkUrl(url: string): string {
  return url.replace(/[\s<>\\"'`]|[^\P{Cf}]/gu, (char) =>
    Array.from(new TextEncoder().encode(char), (byte) => {
      return `%${byte.toString(16).toUpperCase().padStart(2, '0')}`;
    }).join(''),
  );
}
