import { writeFileSync } from 'node:fs';
import { schemaText } from '../lib/job';
import { recordSchemaText } from '../lib/record';

/*
 * Writes shared/job.schema.json and shared/plan.schema.json from the schemas in the code: `npm run
 * schema`. Tests hold them together.
 */
const write = (name: string, text: string): void =>
	writeFileSync(new URL(`../../shared/${name}`, import.meta.url), text);

write('job.schema.json', schemaText());
write('plan.schema.json', recordSchemaText());
