import type { Plan } from '../../lib/plan';
import { pdfFiles, plainFiles } from '../../lib/print';
import { recordOf } from '../../lib/record';
import { loadFonts } from '../fonts';
import { LAYOUTS, MACHINE, type OutFile } from '../write-files';

/** Everything the `plan` command leaves on disk; `machine`: the files for machines as well. */
export function planFiles(plan: Plan, machine: boolean): OutFile[] {
	const fonts = loadFonts();
	return [
		...pdfFiles('print-pack', plan, fonts),
		...plainFiles('order', plan),
		...plainFiles('supplier-orders', plan),
		...plainFiles('cutting-list', plan),
		...plainFiles('parts', plan),
		...plainFiles('offcuts', plan),
		...plainFiles('runs', plan),
		...pdfFiles('labels', plan, fonts),
		...pdfFiles('templates', plan, fonts),
		...pdfFiles('quote', plan, fonts),
		...pdfFiles('cost-sheet', plan, fonts),
		...pdfFiles('counter-lists', plan, fonts),
		...pdfFiles('handover', plan, fonts),
		...pdfFiles('shop-card', plan, fonts),
		{ name: 'plan.json', data: JSON.stringify(recordOf(plan), null, '\t') + '\n' },
		...plainFiles('layouts', plan).map((f) => ({ ...f, name: `${LAYOUTS}/${f.name}` })),
		...(machine ? plainFiles('machine', plan) : []).map((f) => ({
			...f,
			name: `${MACHINE}/${f.name}`,
		})),
	];
}
