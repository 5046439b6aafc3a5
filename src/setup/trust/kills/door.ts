import { connect, createServer, type Server, type Socket } from 'node:net';

/** One address before several servers: whoever comes is led to one that answers. */
export class Door {
	readonly port: number;
	readonly #server: Server;
	readonly #sockets = new Set<Socket>();

	private constructor(server: Server, port: number) {
		this.#server = server;
		this.port = port;
	}

	static async before(ports: readonly number[]): Promise<Door> {
		let turn = 0;
		const server = createServer((device) => {
			const first = turn++;
			door.#lead(
				device,
				ports.map((_, i) => ports[(first + i) % ports.length] ?? 0),
			);
		});
		await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
		const address = server.address();
		const door = new Door(server, typeof address === 'object' && address ? address.port : 0);
		return door;
	}

	close(): void {
		this.#server.close();
		for (const socket of this.#sockets) socket.destroy();
	}

	#lead(device: Socket, [port, ...others]: readonly number[]): void {
		if (port === undefined) return void device.destroy();
		this.#sockets.add(device);
		const server = connect(port, 'localhost');
		server.once('connect', () => device.pipe(server).pipe(device));
		let isIn = false;
		server.once('connect', () => (isIn = true));
		server.on('error', () => (isIn ? device.destroy() : this.#lead(device, others)));
		server.on('close', () => isIn && device.destroy());
		device.on('error', () => server.destroy());
		device.on('close', () => {
			server.destroy();
			this.#sockets.delete(device);
		});
	}
}
