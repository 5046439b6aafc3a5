import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runs } from '../depth';

const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-kill-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the writer for a while after its first plan and kills it, as a cut of the power would. */
function killed(place: string, after: number): Promise<void> {
	const tsx = ['--import', 'tsx', 'tests/cli/writer.ts', place];
	const child = spawn(process.execPath, tsx, {
		stdio: ['ignore', 'pipe', 'inherit'],
		env: { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.cli.json' },
	});
	child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), after));
	return new Promise((resolve) => child.once('close', () => resolve()));
}

/** Each file a person sees under its name, links followed, and which plan it is of. */
function standing(place: string): Map<string, string> {
	const names = readdirSync(place, { recursive: true, encoding: 'utf8' })
		.filter((name) => !name.startsWith('.') && /\.(pdf|csv|json|svg)$/.test(name))
		.filter((name) => existsSync(join(place, name)));
	return new Map(names.map((name) => [name, readFileSync(join(place, name), 'utf8')]));
}

test('killed while it writes: the whole of one plan stands, never none and never two', async () => {
	for (let n = 0; n < runs(20, 6); n++) {
		const place = join(folder, String(n));
		await killed(place, n * 7);
		const files = standing(place);
		const [text = ''] = files.values();
		expect(new Set(files.values()).size).toBe(1);
		expect(text).toMatch(/^(\d+) (\1 ){1999}$/);
		const last = `layouts/sheet-ply-${2 + (parseInt(text, 10) % 2)}.svg`;
		const wanted = ['a.pdf', 'b.csv', 'c.json', 'layouts/sheet-ply-1.svg', last];
		expect([...files.keys()].map((name) => name.replaceAll('\\', '/')).sort()).toEqual(wanted);
	}
});
