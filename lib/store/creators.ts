/** The one person of an installation on one machine; a studio has a row for each. */
export const DEFAULT_CREATOR_ID = '00000000-0000-7000-8000-000000000001';

/** Published tables belong to nobody: every creator may read them, none may change them. */
export const SHARED_CREATOR_ID = '00000000-0000-7000-8000-000000000000';
