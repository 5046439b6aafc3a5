import { describe, expect, test } from 'vitest';
import { loadFonts } from '../../src/cli/fonts';
import { plan as makePlan, type Plan } from '../../src/lib/plan';
import {
	boardDrawings,
	boxDrawings,
	drawingSvg,
	panelDrawings,
	pdfFiles,
	plainFiles,
} from '../../src/lib/print';
import { CANARIES, withCanary } from '../../src/setup/trust/canary/canaries';
import bench from '../../shared/jobs/camper-bench.json';
import cover from '../../shared/jobs/panel-stepped-cover.json';

const fonts = loadFonts();
const planned = (job: unknown, canary: string): Promise<Plan> =>
	makePlan(withCanary(job, canary), { effort: 100 });

/** Every drawing of the screen and of the files. */
function svgsOf(plan: Plan): string[] {
	const drawings = [
		...plan.boxes.flatMap((box) => [...boxDrawings(plan, box), ...boardDrawings(plan, box)]),
		...plan.panels.flatMap((panel) => panelDrawings(plan, panel)),
	];
	return [
		...drawings.map((drawing) => drawingSvg(drawing, { colours: 'css' })),
		...plainFiles('layouts', plan).map(({ data }) => String(data)),
	];
}

/** Names of elements and attributes in a text of tags, as any reader of them sees it. */
function tagsOf(svg: string): { elements: Set<string>; attributes: Set<string> } {
	const elements = new Set<string>();
	const attributes = new Set<string>();
	for (const [, name = '', inside = ''] of svg.matchAll(/<\/?([^\s/>]+)((?:[^>"]|"[^"]*")*)>/g)) {
		elements.add(name);
		for (const [, attribute = ''] of inside.matchAll(/([^\s=/]+)\s*=\s*"[^"]*"/g))
			attributes.add(attribute);
	}
	return { elements, attributes };
}

describe('what looks like a command stays a text', () => {
	test.each(CANARIES)('%s', async (canary) => {
		for (const job of [bench, cover]) {
			const plan = await planned(job, canary);
			expect(plan.job.name).toContain(canary.slice(0, 8));
			const svgs = svgsOf(plan);
			expect(svgs.length).toBeGreaterThan(3);
			for (const svg of svgs) {
				const { elements, attributes } = tagsOf(svg);
				expect([...elements].sort()).toEqual(expect.arrayContaining(['svg', 'title']));
				for (const name of elements) expect(['svg', 'title', 'path', 'text']).toContain(name);
				for (const name of attributes) expect(name).not.toMatch(/^on|href|src/i);
			}
			for (const kind of ['order', 'cutting-list'] as const)
				for (const { data } of plainFiles(kind, plan))
					for (const cell of String(data).split(/[\n,;]/))
						expect(cell.replace(/^"/, '')).not.toMatch(/^[=+@＝]|^-(?!\d)/);
		}
	});

	test('a PDF holds no action, script or address to go to', async () => {
		for (const canary of CANARIES.slice(-1)) {
			const plan = await planned(cover, canary);
			const [pack] = pdfFiles('print-pack', plan, fonts);
			const text = Buffer.from(pack!.data as Uint8Array).toString('latin1');
			const names = text
				.replace(/stream[\s\S]*?endstream/g, '')
				.replace(/\((?:\\.|[^\\()])*\)/g, '()');
			expect(names).toContain('/Type /Page');
			expect(names).not.toMatch(/\/(JS|JavaScript|URI|Launch|AA|SubmitForm)\b/);
		}
	});
});
