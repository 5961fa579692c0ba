import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';

/** Whole files of the two faces, as packages bring them; fonts of the machine are left alone, so that all draw alike. */
const FONTS = [
  'atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf',
  'atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf',
  'barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf',
];

function resvg(svg: string): Resvg {
  const fontFiles = FONTS.map((file) =>
    path.join(process.cwd(), 'node_modules/@expo-google-fonts', file),
  );
  return new Resvg(svg, { font: { fontFiles, loadSystemFonts: false } });
}

/** A drawing as PNG, in its own size, with the fonts of the project alone. */
export function svgToPng(svg: string): Buffer {
  return resvg(svg).render().asPng();
}

/** A drawing with its letters as paths, so that it looks alike where the fonts are not installed. */
export function svgInPaths(svg: string): string {
  return resvg(svg).toString();
}
