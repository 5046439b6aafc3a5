import { writeFileSync } from 'node:fs';
import { schemaText } from '../lib/job';

/*
 * Writes shared/job.schema.json from the schema in the code: `npm run schema`. A test holds the two
 * together.
 */
writeFileSync(new URL('../../shared/job.schema.json', import.meta.url), schemaText());
