import { z } from 'zod';
import { requiredText } from '../_forms/fields';

export const pairForm = z.object({
  name: requiredText('what this device is called', 80),
  code: z.string().trim().max(40).default(''),
});
