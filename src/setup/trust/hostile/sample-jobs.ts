import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';
import { jobTexts, type JobTexts } from './job-cases';

/** The sample jobs, those of old versions too. */
export function sampleJobs(): JobTexts {
	const folder = join(ROOT, 'shared', 'jobs');
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
		.filter((name) => name.endsWith('.json'))
		.sort();
	return jobTexts(names.map((name) => readFileSync(join(folder, name), 'utf8')));
}
