/** The box that says whether a piece is of a dish, by the dish it is about: which dishes there are differs. */
export const DISH = 'dish-';
