/**
 * Contrast ratio of two colours (1 to 21) as WCAG 2.2 defines it ("relative luminance", "contrast ratio";
 * W3C source of 19 August 2026, threshold 0.04045). `contrastRatio('#000000', '#FFFFFF')` → `21`.
 */
export function contrastRatio(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

function luminance(hex: string): number {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (!match) throw new Error(`not a six-digit colour: ${hex}`);
  const [red = 0, green = 0, blue = 0] = match.slice(1).map((pair) => {
    const c = Number.parseInt(pair, 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
