import { createHash, randomBytes } from 'node:crypto';
import { type Right, RIGHTS } from '../lib/store';
import type { KeptValue } from './keeping';

/** A link as it is kept: of its secret only what tells whether another is the same. */
export interface KeptLink {
	readonly id: string;
	readonly name: string;
	readonly right: Right;
	readonly hash: string;
	/** Milliseconds since 1970. */
	readonly made: number;
	readonly withdrawn?: number;
}

/** Links a shop may have, withdrawn ones among them. */
const MOST = 500;
const LONGEST_NAME = 80;

const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');

/** How often a change is tried against those of other servers. */
const TRIES = 20;

/** The links of a shop: who may come in, and to do what. */
export class Links {
	/** Told when another server has made one, or withdrawn one. */
	onElsewhere: () => void = () => undefined;
	readonly #kept: KeptValue;
	#links: readonly KeptLink[] = [];

	private constructor(kept: KeptValue) {
		this.#kept = kept;
	}

	/** Rejects when they cannot be read, or are none of ours: nobody is let in by mistake. */
	static async in(kept: KeptValue): Promise<Links> {
		const links = new Links(kept);
		kept.onChanged = () => void links.#hear();
		await links.#read();
		return links;
	}

	get all(): readonly KeptLink[] {
		return this.#links;
	}

	/** The link of this secret, be it withdrawn; null for none. */
	of(secret: unknown): KeptLink | null {
		if (typeof secret !== 'string') return null;
		const hash = hashOf(secret);
		return this.#links.find((link) => link.hash === hash) ?? null;
	}

	isWithdrawn(id: string): boolean {
		return this.#links.some((link) => link.id === id && link.withdrawn !== undefined);
	}

	/** Its secret is told this once; null when there are too many. */
	async make(name: string, right: Right): Promise<string | null> {
		const secret = randomBytes(18).toString('base64url');
		const id = randomBytes(6).toString('hex');
		const made = Date.now();
		const link = { id, name: name.slice(0, LONGEST_NAME), right, hash: hashOf(secret), made };
		const done = await this.#put((links) => (links.length >= MOST ? null : [...links, link]));
		return done ? secret : null;
	}

	/** Another link by which all may be done must be left. False when there is none, or no such. */
	withdraw(id: string): Promise<boolean> {
		const withdrawn = Date.now();
		return this.#put((links) => {
			const there = links.find((link) => link.id === id && link.withdrawn === undefined);
			const others = links.filter((link) => link.id !== id && link.withdrawn === undefined);
			if (!there || !others.some(({ right }) => right === 'all')) return null;
			return links.map((link) => (link === there ? { ...link, withdrawn } : link));
		});
	}

	/** What is to be done is looked at anew when another server was faster. */
	async #put(change: (links: readonly KeptLink[]) => readonly KeptLink[] | null): Promise<boolean> {
		for (let tries = 0; tries < TRIES; tries++) {
			const links = change(this.#links);
			if (!links) return false;
			if (await this.#kept.write(links)) {
				this.#links = links;
				return true;
			}
			await this.#read();
		}
		throw new Error('The links of the shop are written by others all the time.');
	}

	/** When they cannot be read the shop is away, and read anew when it is back. */
	async #hear(): Promise<void> {
		try {
			await this.#read();
			this.onElsewhere();
		} catch {
			// Nobody is let in, or put out, by what cannot be read.
		}
	}

	async #read(): Promise<void> {
		const links = (await this.#kept.read()) ?? [];
		if (!Array.isArray(links) || !links.every(isLink))
			throw new TypeError('The links of the shop are torn.');
		this.#links = links;
	}
}

function isLink(link: unknown): link is KeptLink {
	const { id, hash, name, right } = (link ?? {}) as Record<string, unknown>;
	return [id, hash, name].every((text) => typeof text === 'string') && isRight(right);
}

export const isRight = (right: unknown): right is Right => RIGHTS.some((one) => one === right);
