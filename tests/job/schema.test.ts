import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { schemaText } from '../../src/lib/job/json-schema';

test('shared/job.schema.json says what the code reads: after a change run npm run schema', () => {
	const file = readFileSync(new URL('../../shared/job.schema.json', import.meta.url), 'utf8');
	expect(file).toBe(schemaText());
});

test('it describes boxes, panels, parts and stock, and refuses unknown fields', () => {
	const schema = JSON.parse(schemaText()) as {
		properties: Record<string, object>;
		additionalProperties: boolean;
	};
	expect(Object.keys(schema.properties)).toEqual(
		expect.arrayContaining(['boxes', 'panels', 'parts', 'stock', 'shop', 'version']),
	);
	expect(schema.additionalProperties).toBe(false);
});
