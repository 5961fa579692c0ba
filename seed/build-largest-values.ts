import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { largestValues } from '#lib/foods/largest-value';
import { loadSr28 } from '#seed/load-sr28';

/**
 * Writes `lib/foods/largest-in-sr28.ts` anew from the reference foods: `tsx seed/build-largest-values.ts`, then
 * `npm run format`.
 */
const rows = [...largestValues(loadSr28())].map(
  ([nutrient, { value, sourceNo, name }]) =>
    `  ${nutrient}: { value: ${value}, sourceNo: ${JSON.stringify(sourceNo)}, name: ${JSON.stringify(name)} },`,
);
const text = `import type { LargestValue } from '#lib/foods/largest-value';
import type { Nutrient } from '#lib/foods/nutrients';

/**
 * The largest value of each vitamin, mineral and of cholesterol per 100 g in USDA SR28, in the nutrient's unit, and
 * the first food that has it. Written by \`seed/build-largest-values.ts\`; a test holds it against the table.
 */
export const LARGEST_IN_SR28: Partial<Readonly<Record<Nutrient, LargestValue>>> = {
${rows.join('\n')}
};
`;
writeFileSync(fileURLToPath(new URL('../lib/foods/largest-in-sr28.ts', import.meta.url)), text);
