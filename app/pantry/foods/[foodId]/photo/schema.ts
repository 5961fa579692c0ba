import { z } from 'zod';
import { revision, rowId } from '../../../../_forms/fields';

/** What a photo is attached to; its file is no text and is read beside these. */
export const photoForm = z.object({ foodId: rowId, versionId: rowId });
export const takeOutForm = z.object({ foodId: rowId, photoId: rowId, rev: revision });
export const putBackForm = z.object({ foodId: rowId, photoId: rowId });
