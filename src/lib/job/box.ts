import { z } from 'zod';
import { id, name } from './fields';

export const box = z.strictObject({ id, name });
export type Box = z.output<typeof box>;
