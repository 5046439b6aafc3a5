import { job } from './job';
import { z } from './zod';

/** What a job file may hold, as JSON Schema (2020-12), for editors and other programs. */
export function schemaText(): string {
	const schema = z.toJSONSchema(job, { io: 'input', unrepresentable: 'any', reused: 'ref' });
	const titled = { title: 'Kerf & Nap job', ...schema };
	return JSON.stringify(titled, null, '\t') + '\n';
}
