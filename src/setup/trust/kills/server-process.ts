import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { node, ROOT, tool } from '../../tool.js';

/** Starting from the sources takes seconds each time; from one file it takes none. */
const BUILT = join(ROOT, 'out', 'shop-server');
const BUILD = [
	...['build', '--ssr', 'tests/shop/serving.ts', '--outDir', BUILT],
	...['--config', 'src/cli/vite.config.ts', '--logLevel', 'warn'],
];
let building: Promise<number> | null = null;

interface Started {
	readonly most?: number;
	readonly app?: string;
	readonly network?: boolean;
}

/** A shop's server as a process of its own. */
export class ServerProcess {
	readonly port: number;
	/** Of the first link; empty where there was one already. */
	readonly secret: string;
	readonly #child: ChildProcess;
	readonly #gone: Promise<void>;

	private constructor(child: ChildProcess, said: { port: number; secret: string }) {
		this.#child = child;
		this.port = said.port;
		this.secret = said.secret;
		this.#gone = new Promise((resolve) => child.once('close', () => resolve()));
	}

	/**
	 * @param most bytes a file may have, for a disk that is full; none for no limit
	 * @param app the folder of the built app; none for the documents alone
	 * @param network told to the local network too, by https
	 */
	static async start(
		folder: string,
		port: number,
		{ most, app = folder, network = false }: Started = {},
	): Promise<ServerProcess> {
		building ??= node(tool('vite'), BUILD, { stdio: ['ignore', process.stderr, process.stderr] });
		if ((await building) !== 0) throw new Error("The shop's server cannot be built.");
		const program = [process.execPath, join(BUILT, 'kerf-and-nap.js'), folder, String(port), app];
		if (network) program.push('network');
		const limit = `ulimit -f ${Math.ceil((most ?? 0) / 1024)}; exec "$@"`;
		const [shell = '', ...args] =
			most === undefined ? program : ['bash', '-c', limit, 'bash', ...program];
		const child = spawn(shell, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
		let fault = '';
		child.stderr.on('data', (data: Buffer) => (fault += data.toString()));
		for await (const line of createInterface(child.stdout))
			return new ServerProcess(child, JSON.parse(line) as { port: number; secret: string });
		throw new Error(`The server did not start: ${fault}`);
	}

	get pid(): number {
		return this.#child.pid ?? 0;
	}

	/** As if the power of the process were cut. */
	async kill(): Promise<void> {
		this.#child.kill('SIGKILL');
		await this.#gone;
	}
}
