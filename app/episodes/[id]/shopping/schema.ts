import { z } from 'zod';
import { rowId } from '../../../_forms/fields';

export const sameLabelForm = z.object({ foodId: rowId });
