/** The door through which the schema library enters. */
import { config, z } from 'zod';

// A job is read once a plan: compiling a parser for each part of the schema takes longer than it saves.
config({ jitless: true });

export { z };
