import { z } from 'zod';
import { rowId } from '../../../../_forms/fields';

export const mergeForm = z.object({ from: rowId, into: rowId });
export const takeApartForm = z.object({ foodId: rowId, groupId: rowId });
