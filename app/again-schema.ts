import { z } from 'zod';
import { rowId } from './_forms/fields';

export const copyEpisodeForm = z.object({ episodeId: rowId });
