/** What cooks type, and the numbers in SR28 that answer it (any of them counts). */
export const KITCHEN_QUERIES: readonly (readonly [query: string, accept: readonly string[]])[] = [
  ['chicken breast raw', ['05062']],
  ['egg white', ['01124']],
  ['ground turkey 93', ['05665']],
  ['zucchini', ['11477']],
  ['baby spinach', ['11457']],
  ['part skim mozzarella', ['01028']],
  ['greek yogurt nonfat', ['01256']],
  ['olive oil', ['04053']],
  ['black beans cooked', ['16015']],
  ['rolled oats', ['08120', '20038']],
  ['button mushrooms', ['11260']],
  ['cottage cheese lowfat', ['01016', '01015']],
  ['sweet potato raw', ['11507']],
  ['salmon atlantic raw', ['15076', '15236']],
  ['white rice cooked', ['20045']],
];
