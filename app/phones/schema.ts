import { z } from 'zod';
import { revision, rowId } from '../_forms/fields';

export const makeCodeForm = z.object({});

export const sendAwayForm = z.object({ deviceId: rowId, rev: revision, name: z.string().max(80) });
