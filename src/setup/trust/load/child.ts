import { loadFonts } from '../../../cli/fonts';
import { troublesOf } from '../../../lib/job';
import { plan as makePlan } from '../../../lib/plan';
import { forPaper, pdfFiles, plainFiles } from '../../../lib/print';
import { heavyJob, type Weight } from './heavy-jobs';

/** What planning and printing a heavy job took, in a process of its own. */
export interface Carried {
	/** Processor time, s. */
	readonly planned: number;
	readonly printed: number;
	/** Peak of the process, MiB. */
	readonly peak: number;
	readonly placed: number;
	/** What should not be: troubles of the job, faults of the audit, pages not drawn. */
	readonly amiss: readonly string[];
}

const seconds = (): number => {
	const { user, system } = process.cpuUsage();
	return (user + system) / 1e6;
};

async function carry(weight: Weight): Promise<Carried> {
	const fonts = loadFonts();
	const file = heavyJob(weight);
	const begun = seconds();
	const plan = forPaper(await makePlan(file), file);
	const between = seconds();
	const pdfs = (['print-pack', 'labels'] as const).flatMap((kind) => pdfFiles(kind, plan, fonts));
	const lists = (['order', 'cutting-list'] as const).flatMap((kind) => plainFiles(kind, plan));
	return {
		planned: between - begun,
		printed: seconds() - between,
		peak: process.resourceUsage().maxRSS / 1024,
		placed: plan.boards
			.flatMap(({ answer }) => answer.layouts)
			.reduce((sum, { placed }) => sum + placed.length, 0),
		amiss: [
			...troublesOf(plan.problems).map(({ what }) => what),
			...plan.boards.flatMap(({ faults }) => faults.map(({ what }) => `audit: ${what}`)),
			...pdfs.flatMap(({ undrawn }) => undrawn ?? []),
			...(pdfs.length + lists.length === 4 ? [] : ['not every file was made']),
		],
	};
}

const [parts = 0, offcuts = 0] = process.argv.slice(2).map(Number);
process.stdout.write(JSON.stringify(await carry({ parts, offcuts })));
