import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { jobOption } from '../../../src/lib/job/options/option';
import { withOption } from '../../../src/lib/job/options/with-option';

const FILE: JobFile = {
	name: 'Doors',
	options: [{ id: 'o', name: 'Other' }],
	parts: [
		{ id: 'A', material: 'ply', length: 500, width: 300 },
		{ id: 'B', material: 'ply', length: 400, width: 300, count: 2 },
	],
};

const made = (...changes: readonly object[]) => {
	const option = jobOption.parse({ id: 'o', name: 'Other', changes });
	const before = JSON.stringify(FILE);
	const { file, problems } = withOption(FILE, option, ['options', 0]);
	expect(JSON.stringify(FILE)).toBe(before);
	return { file: file as JobFile, said: problems.map((p) => `${p.path.join('.')}: ${p.what}`) };
};

describe('a job with an option in it', () => {
	it('has fields set by the marks of things, as JSON or as plain text', () => {
		const { file, said } = made(
			{ path: 'parts/B/material', value: 'mdf' },
			{ path: 'parts/B/count', value: '3' },
			{ path: 'parts/0/width', value: '12 in' },
			{ path: 'notes', value: '' },
		);
		expect(said).toEqual([]);
		expect(file.parts).toEqual([
			{ id: 'A', material: 'ply', length: 500, width: '12 in' },
			{ id: 'B', material: 'mdf', length: 400, width: 300, count: 3 },
		]);
		expect(file.notes).toBe('');
	});

	it('has things added and taken out, in the order of the changes, and no options of its own', () => {
		const { file } = made(
			{ do: 'remove', path: 'parts/A' },
			{ do: 'add', path: 'parts', value: '{"id":"C","material":"ply","length":100,"width":90}' },
			{ do: 'add', path: 'panels', value: '{"id":"P"}' },
			{ path: 'parts/C/count', value: '4' },
		);
		expect(file.parts?.map((p) => [p.id, p.count])).toEqual([
			['B', 2],
			['C', 4],
		]);
		expect(file.panels).toEqual([{ id: 'P' }]);
		expect(file.options).toBeUndefined();
	});

	it('is told where a change names nothing, and where nothing can be added', () => {
		const { said } = made(
			{ path: 'parts/Z/count', value: '3' },
			{ path: 'parts/7', value: '3' },
			{ do: 'remove', path: 'boxes/b' },
			{ do: 'add', path: 'name', value: '{}' },
			{ do: 'add', path: 'parts', value: 'C' },
			{ path: '__proto__/x', value: '1' },
		);
		expect(said).toEqual([
			'options.0.changes.0.path: The option changes parts/Z/count, and the job has no such place.',
			'options.0.changes.1.path: The option changes parts/7, and the job has no such place.',
			'options.0.changes.2.path: The option changes boxes/b, and the job has no such place.',
			'options.0.changes.3.path: The option changes name, and the job has no such place.',
			'options.0.changes.4.value: Nothing can be added to parts: the value is no thing.',
			'options.0.changes.5.path: The option changes __proto__/x, and the job has no such place.',
		]);
	});
});
