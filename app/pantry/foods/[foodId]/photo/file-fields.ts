/** The two fields of a form for a photo: a file that is there, and one taken now. */
export const FILE_FIELDS = ['photo', 'taken'] as const;
