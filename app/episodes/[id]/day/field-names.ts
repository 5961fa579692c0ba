/** Fields that are named by the segment they are about, since which segments there are differs. */

/** The box that says whether a segment is filmed. */
export const FILM = 'film-';
/** The choice of what of another episode's segment is filmed. */
export const PLACE = 'place-';
