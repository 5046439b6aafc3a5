import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { createInterface } from 'node:readline';
import { programPath } from '../../programs.js';

/** A shared store as a process of its own, to be killed; what it is given stays in its folder. */
export class RedisProcess {
	readonly url: string;
	readonly pid: number;
	readonly #child: ChildProcess;
	readonly #gone: Promise<void>;

	private constructor(child: ChildProcess, port: number) {
		this.#child = child;
		this.url = `redis://127.0.0.1:${port}`;
		this.pid = child.pid ?? 0;
		this.#gone = new Promise((resolve) => child.once('close', () => resolve()));
	}

	/** @param port 0 for a free one */
	static async start(
		folder: string,
		port = 0,
		more: readonly string[] = [],
	): Promise<RedisProcess> {
		const on = port || (await freePort());
		const settings = {
			...{ dir: folder, port: String(on), bind: '127.0.0.1', save: '' },
			...{ appendonly: 'yes', appendfsync: 'always' },
		};
		const args = Object.entries(settings).flatMap(([name, value]) => [`--${name}`, value]);
		const child = spawn(programPath('redis-server'), [...args, ...more], {
			stdio: ['ignore', 'pipe', 'inherit'],
		});
		let said = '';
		for await (const line of createInterface(child.stdout)) {
			said += `${line}\n`;
			if (line.includes('Ready to accept connections')) {
				child.stdout.resume();
				return new RedisProcess(child, on);
			}
		}
		throw new Error(`The shared store did not start: ${said}`);
	}

	get port(): number {
		return Number(new URL(this.url).port);
	}

	/** As if the power of the process were cut. */
	async kill(): Promise<void> {
		this.#child.kill('SIGKILL');
		await this.#gone;
	}
}

export function freePort(): Promise<number> {
	return new Promise((resolve) => {
		const server = createServer().listen(0, '127.0.0.1', () => {
			const address = server.address();
			const port = typeof address === 'object' && address ? address.port : 0;
			server.close(() => resolve(port));
		});
	});
}
