import { printGrams } from '#lib/units/print';

/** A food of which more was weighed on the day than its lots held, in milligrams off the shelf. */
export interface Shortage {
  readonly foodId: string;
  readonly name: string;
  readonly weighedMg: number;
  readonly takenMg: number;
}

/** `'Cheese: 800 g were weighed and 700 g were in stock, 100 g too little'`. */
export function shortageText({ name, weighedMg, takenMg }: Shortage): string {
  const grams = (mg: number) => `${printGrams(mg)} g`;
  const short = grams(weighedMg - takenMg);
  return `${name}: ${grams(weighedMg)} were weighed and ${grams(takenMg)} were in stock, ${short} too little`;
}
