/** How many of each an episode file may hold, and so how many rows of each the store keeps under one parent. */
export const MOST = {
  segments: 100,
  targets: 40,
  ties: 2000,
  webLinks: 40,
  ingredients: 400,
  readings: 2000,
  portions: 20,
  lots: 40,
  talkingPoints: 100,
  swaps: 200,
  swapSteps: 100,
  replies: 2000,
  pieces: 100,
  dishesOfPiece: 20,
} as const;
