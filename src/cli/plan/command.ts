import { BENCH_PAPERS, notesOf, parseJobText, type Problem, troublesOf } from '../../lib/job';
import type { Progress } from '../../lib/layout';
import { plan as makePlan, type Plan, type PlanOptions, withOptions } from '../../lib/plan';
import { forPaper } from '../../lib/print';
import { recordOf } from '../../lib/record';
import { type PlannedTogether, planTogether } from '../../lib/together';
import sample from '../../../shared/jobs/camper-bench.json';
import { readStdin, readText } from '../input';
import { parse, parseFiles, wholeNumber } from '../options';
import { planFiles } from './files';
import { problemText } from '../print-problems';
import { summary } from './summary';
import { Usage } from '../usage';
import { LAYOUTS, MACHINE, type OutFile, tryFolder, writeFiles } from '../write-files';

/** `plan`: a job in, everything made of it out. Returns the exit code. */
export async function planCommand(args: readonly string[]): Promise<number> {
	const { values, files: given } = parseFiles(args, {
		out: { type: 'string' },
		json: { type: 'boolean' },
		machine: { type: 'boolean' },
		paper: { type: 'string' },
		seed: { type: 'string' },
		effort: { type: 'string' },
	});
	const seed = wholeNumber(values, 'seed', 0xffffffff);
	const effort = wholeNumber(values, 'effort', 1e9);
	const paper = paperOf(values['paper']);
	const read = await readFiles(given);
	const folder = values['json'] ? null : String(values['out'] ?? 'out');
	if (folder !== null) tryFolder(folder);
	const options: PlanOptions = {
		...(seed === null ? {} : { seed }),
		...(effort === null ? {} : { effort }),
		watch: tellTerminal(),
	};
	const jobs = read.map((r) => (paper ? { ...r, file: onPaper(r.file, paper) } : r));
	const made = await planned(jobs, options);
	clearTerminal();
	if ('refused' in made) return refused(made.refused);
	const { plan } = made;
	if (folder === null) process.stdout.write(JSON.stringify(recordOf(plan), null, 2) + '\n');
	const undrawn = folder === null ? [] : leave(plan, folder, values['machine'] === true);
	const code = refused(plan.problems);
	return undrawn.length > 0 ? faulted(undrawn) : code;
}

/** The plan of one job, or of several in one go; of these, why there is none. */
async function planned(jobs: readonly ReadFile[], options: PlanOptions): Promise<PlannedTogether> {
	const [one] = jobs;
	if (one && jobs.length === 1) {
		const made = await withOptions(await makePlan(one.file, options), one.file, options);
		return { plan: noting(made, one) };
	}
	const files = jobs.map(({ file }) => file);
	const made = await planTogether(files, options);
	if ('refused' in made) return made;
	const twice = jobs.flatMap((job) => job.twice);
	return { plan: noting(made.plan, { file: files, twice }) };
}

/** `check`: the problems and notes of a job, and nothing else. */
export async function checkCommand(args: readonly string[]): Promise<number> {
	const { file } = parse(args, {});
	const read = await readFile(file);
	const { problems } = noting(await makePlan(read.file, { watch: tellTerminal() }), read);
	clearTerminal();
	return refused(problems, process.stdout);
}

/** The plan with what only the text of its file could tell, and what its paper cannot show. */
function noting(plan: Plan, { file, twice }: ReadFile): Plan {
	return forPaper({ ...plan, problems: [...twice, ...plan.problems] }, file);
}

/** Leaves all files; returns the pages that could not be drawn. */
function leave(plan: Plan, folder: string, machine: boolean): readonly string[] {
	const files = planFiles(plan, machine);
	writeFiles(folder, files);
	process.stdout.write(summary(plan, folder, namesFor(files)));
	return files.flatMap((f) => f.undrawn ?? []);
}

/** The files by their names, those of a folder by their number. */
function namesFor(files: readonly OutFile[]): string[] {
	const within = (folder: string) => files.filter((f) => f.name.startsWith(`${folder}/`)).length;
	const machine = within(MACHINE);
	return [
		...files.filter((f) => !f.name.includes('/')).map((f) => f.name),
		`${within(LAYOUTS)} layouts as SVG`,
		...(machine > 0 ? [`${machine} files for machines`] : []),
	];
}

function faulted(undrawn: readonly string[]): number {
	const pages = undrawn.map((page) => `  ${page}\n`).join('');
	process.stderr.write(
		`The planner has a fault of its own: what these pages show could not be drawn, and they say so.\n${pages}`,
	);
	return 3;
}

type ReadFile = Exclude<ReturnType<typeof parseJobText>, { readonly problems: unknown }>;

/** The built-in sample where none is named; standard input once at most. */
async function readFiles(files: readonly string[]): Promise<ReadFile[]> {
	if (files.filter((file) => file === '-').length > 1)
		throw new Usage('Standard input (-) holds one job: name it once.');
	const read: ReadFile[] = [];
	for (const file of files.length === 0 ? [undefined] : files) read.push(await readFile(file));
	return read;
}

async function readFile(file: string | undefined): Promise<ReadFile> {
	if (file === undefined) return { file: sample, twice: [] };
	const text = file === '-' ? await readStdin() : readText(file);
	const read = parseJobText(text);
	if ('problems' in read)
		throw new Usage(`${file}: ${read.problems.map((p) => `${p.what} ${p.fix}`).join(' ')}`);
	return read;
}

/** Says all problems, notes last; only what is more than a note makes the job a refused one. */
function refused(problems: readonly Problem[], to: NodeJS.WriteStream = process.stderr): number {
	const troubles = troublesOf(problems);
	to.write([...troubles, ...notesOf(problems)].map(problemText).join(''));
	return troubles.length > 0 ? 1 : 0;
}

function paperOf(text: string | boolean | undefined): string | null {
	if (text === undefined) return null;
	if (typeof text === 'string' && Object.hasOwn(BENCH_PAPERS, text)) return text;
	throw new Usage(`--paper is "${String(text)}": give ${Object.keys(BENCH_PAPERS).join(', ')}.`);
}

/** The job on another paper; whatever else stands in the file is left for the reader to judge. */
function onPaper(file: unknown, paper: string): unknown {
	if (typeof file !== 'object' || file === null || Array.isArray(file)) return file;
	const { shop } = file as { shop?: unknown };
	if (shop !== undefined && (typeof shop !== 'object' || shop === null)) return file;
	return { ...file, shop: { ...shop, paper } };
}

/** Progress is for whoever looks on, never for a file or another program. */
function tellTerminal(): (progress: Progress) => boolean {
	return ({ stage, done }) => {
		if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${Math.round(done * 100)} % ${stage}`);
		return true;
	};
}

function clearTerminal(): void {
	if (process.stderr.isTTY) process.stderr.write('\r\x1b[K');
}
