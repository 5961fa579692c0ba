import { z } from 'zod';
import { rowId } from '../_forms/fields';

export const takeBackAnyForm = z.object({ groupId: rowId });
