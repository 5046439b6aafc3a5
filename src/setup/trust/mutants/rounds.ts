import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createVitest, type TestModule, type TestSpecification, type Vitest } from 'vitest/node';
import type { Numbered } from './find';
import type { Order } from './in-tests';

/** Rooms whose tests reach what is mutated. */
const TESTED = [
	...['measure', 'geometry', 'design', 'wrap', 'nest', 'layout', 'estimate'],
	...['plan', 'published', 'second'],
].map((room) => `tests/${room}/`);

/** Seconds of processor time a mutant's tests may take before they count as hanging. */
const MOST = 90;

/** Which tests reach which mutants, and how long each file takes. */
export interface Reach {
	/** Tests by mutant, as file and name. */
	readonly tests: Readonly<Record<number, readonly string[]>>;
	/** Reached while a file was loaded: whatever it changes, any test of the room may see. */
	readonly loaded: readonly number[];
	/** Milliseconds by file. */
	readonly time: Readonly<Record<string, number>>;
}

export type Verdict = 'killed' | 'survived' | 'hung' | 'not reached';

/** One runner of tests for all mutants of a scratch copy: files are compiled once. */
export class Rounds {
	private constructor(
		private readonly folder: string,
		private readonly vitest: Vitest,
		private readonly specs: readonly TestSpecification[],
	) {}

	static async begin(folder: string): Promise<Rounds> {
		const quiet = { reporters: [{}], watch: false };
		const vitest = await createVitest('test', {
			root: folder,
			config: join(folder, 'vitest.config.ts'),
			...quiet,
		});
		return new Rounds(folder, vitest, await vitest.globTestSpecifications(TESTED));
	}

	end(): Promise<void> {
		return this.vitest.close();
	}

	/** Runs all tests once, without a mutant. Throws when one of them fails. */
	async reach(): Promise<Reach> {
		rmSync(join(this.folder, 'reached.jsonl'), { force: true });
		this.order({ mutant: null, tests: null, most: 3600 });
		this.vitest.config.bail = 0;
		const { modules } = await this.run(this.specs);
		const failed = modules.filter((m) => !m.ok()).map((m) => m.relativeModuleId);
		if (failed.length > 0) throw new Error(`tests fail without any mutant: ${failed.join(', ')}`);
		const time = modules.map((m) => [m.relativeModuleId, m.diagnostic().duration] as const);
		return { ...this.reached(), time: Object.fromEntries(time) };
	}

	private reached(): Omit<Reach, 'time'> {
		const file = join(this.folder, 'reached.jsonl');
		const lines = readFileSync(file, 'utf8').trim().split('\n');
		const tests: Record<number, string[]> = {};
		const loaded = new Set<number>();
		for (const line of lines) {
			const [test, ids] = JSON.parse(line) as [string, number[]];
			for (const id of ids)
				if (test.endsWith('> ')) loaded.add(id);
				else (tests[id] ??= []).push(test);
		}
		return { tests, loaded: [...loaded] };
	}

	/** Tries one mutant on the tests that reach it, the quickest first, to the first that fails. */
	async verdict(mutant: Numbered, reach: Reach): Promise<{ verdict: Verdict; by: string }> {
		const any = reach.loaded.includes(mutant.id);
		const tests = any ? null : (reach.tests[mutant.id] ?? []);
		if (tests?.length === 0) return { verdict: 'not reached', by: '' };
		const files = new Set(tests?.map((test) => test.slice(0, test.indexOf(' > '))));
		const fits = (path: string): boolean => (any ? isNear(path, mutant.file) : files.has(path));
		const time = (spec: TestSpecification): number => reach.time[this.path(spec)] ?? 0;
		const specs = this.specs
			.filter((spec) => fits(this.path(spec)))
			.sort((a, b) => time(a) - time(b));
		this.order({ mutant: mutant.id, tests, most: MOST });
		this.vitest.config.bail = 1;
		for (const some of [specs.filter((s) => isNear(this.path(s), mutant.file)), specs]) {
			if (some.length === 0) continue;
			const { modules, hung } = await this.run(some);
			const killer = modules.find((m) => !m.ok() && m.state() !== 'skipped');
			if (hung) return { verdict: 'hung', by: '' };
			if (killer) return { verdict: 'killed', by: failing(killer) };
		}
		return { verdict: 'survived', by: '' };
	}

	private path(spec: TestSpecification): string {
		return spec.moduleId.slice(this.folder.length + 1).replaceAll('\\', '/');
	}

	private order(order: Order): void {
		writeFileSync(join(this.folder, 'order.json'), JSON.stringify(order));
	}

	private async run(
		specs: readonly TestSpecification[],
	): Promise<{ modules: readonly TestModule[]; hung: boolean }> {
		this.vitest.state.filesMap.clear();
		this.vitest.state.errorsSet.clear();
		const code = process.exitCode;
		const { testModules, unhandledErrors } = await this.vitest.runTestSpecifications(
			[...specs],
			false,
		);
		process.exitCode = code;
		return { modules: testModules, hung: unhandledErrors.length > 0 };
	}
}

/** A test of the room the mutant lies in: `src/lib/design/box/...` and `tests/design/...`. */
function isNear(test: string, file: string): boolean {
	const room = file.split('/')[2] ?? '';
	return test.startsWith(`tests/${room}/`);
}

function failing(module: TestModule): string {
	for (const test of module.children.allTests('failed'))
		return `${module.relativeModuleId} > ${test.fullName}`;
	return module.relativeModuleId;
}
