import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
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

/** Which plans the files of a folder are of. */
function plansIn(place: string): Set<string> {
	const names = readdirSync(place, { recursive: true, encoding: 'utf8' });
	const whole = names.filter((name) => /\.(pdf|csv|json|svg)$/.test(name));
	return new Set(whole.map((name) => readFileSync(join(place, name), 'utf8')));
}

test('killed while it writes: never two plans mixed, every file whole', async () => {
	for (let n = 0; n < runs(20, 6); n++) {
		const place = join(folder, String(n));
		await killed(place, n * 7);
		const plans = plansIn(place);
		expect(plans.size).toBeLessThanOrEqual(1);
		for (const text of plans) expect(text).toMatch(/^(\d+) (\1 ){1999}$/);
	}
});
