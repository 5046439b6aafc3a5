import { z } from 'zod';
import { id, name } from './fields';

export const panel = z.strictObject({ id, name });
export type Panel = z.output<typeof panel>;
