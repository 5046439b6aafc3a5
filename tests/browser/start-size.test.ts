import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';

interface Chunk {
	readonly file: string;
	readonly imports?: readonly string[];
}
type Manifest = Readonly<Record<string, Chunk>>;

const CLIENT = '.svelte-kit/output/client';

/** What the browser must have before a job card can stand with its drawings and figures. */
const START = [
	/\/runtime\/client\/entry\.js$/,
	/\/client-optimized\/app\.js$/,
	/\/client-optimized\/nodes\/0\.js$/, // what stands round every page
	/\/client-optimized\/nodes\/2\.js$/, // the job card
	/^src\/lib\/ui\/chapters\/build\/Build\.svelte$/,
];

/** The files behind the roots: they, and whatever they cannot be run without. */
function needed(manifest: Manifest, roots: readonly string[]): Set<string> {
	const keys = new Set<string>();
	const open = [...roots];
	for (let key = open.pop(); key !== undefined; key = open.pop()) {
		if (keys.has(key)) continue;
		keys.add(key);
		open.push(...(manifest[key]?.imports ?? []));
	}
	return new Set([...keys].map((key) => manifest[key]?.file ?? ''));
}

test('the script needed before the card stands is under 150 kB, gzipped', async () => {
	const manifest = JSON.parse(await readFile(`${CLIENT}/.vite/manifest.json`, 'utf8')) as Manifest;
	const roots = START.map((root) => Object.keys(manifest).find((key) => root.test(key)) ?? '');
	expect(roots).not.toContain('');
	const files = needed(manifest, roots);
	let bytes = 0;
	for (const file of files) bytes += gzipSync(await readFile(`${CLIENT}/${file}`)).length;
	console.log(`start script: ${(bytes / 1000).toFixed(1)} kB gzip in ${files.size} files`);
	expect(files.size).toBeGreaterThan(10);
	expect(bytes).toBeLessThan(150_000);
});
