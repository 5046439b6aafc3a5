import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, isStale } from '../../build.js';
import { serve } from '../../serve.js';
import { ROOT } from '../../tool.js';
import { Chromium } from '../browser';
import type { Asked, Row } from '../row';
import { CANARIES, withCanary } from './canaries';
import { LISTEN, SCREENS, tour } from './tour';

/** A bench in cloth, and a panel in layers: together every kind of page. */
const JOBS = ['camper-bench.json', 'panel-stepped-cover.json'];

/** Every canary in every text of a person's own, on every screen of the built app. */
export async function canary({ count = CANARIES.length, note }: Asked): Promise<Row> {
	if (isStale() && (await build()) !== 0) throw new Error('the app cannot be built');
	const { address, close } = await serve(join(ROOT, 'build'), 4441);
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-profile-'));
	const chromium = await Chromium.open(folder);
	const found: string[] = [];
	try {
		await chromium.page.addInitScript(LISTEN);
		for (const [i, text] of CANARIES.slice(0, count).entries()) {
			note(`canary ${i + 1} of ${count}`);
			const file = join(ROOT, 'shared', 'jobs', JOBS[i % JOBS.length] ?? '');
			const job = withCanary(JSON.parse(readFileSync(file, 'utf8')), text) as object;
			const amiss = await tour(chromium.page, address, job);
			found.push(...amiss.map((what) => `${text}: ${what}`));
		}
	} finally {
		await chromium.kill();
		close();
		rmSync(folder, { recursive: true, force: true });
	}
	const tried = Math.min(count, CANARIES.length) * SCREENS;
	const spoilt = new Set(found.map((one) => one.split(': ').slice(0, 2).join())).size;
	return {
		what: 'strange words in every text field, screen by screen',
		tried,
		survived: tried - spoilt,
		executed: found.filter((one) => one.endsWith('executed')).length,
		found,
		notes: [
			`${Math.min(count, CANARIES.length)} texts on ${SCREENS} screens; ${found.filter((one) => one.includes('refused: ')).length} times the content security policy had to refuse something`,
		],
		notCovered: 'what other programs make of a CSV, an SVG or a PDF with such words in it',
	};
}
