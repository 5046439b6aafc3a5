/** The door through which the schema library enters. */
export { z } from 'zod';
