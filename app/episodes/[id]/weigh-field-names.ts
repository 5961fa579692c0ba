/** Fields of a reading that several ingredients share: whether one does, and its part of it. */
export const WITH = 'with-';
export const PARTS = 'parts-';
