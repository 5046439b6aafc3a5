import { createHash, randomBytes } from 'node:crypto';
import { type Right, RIGHTS } from '../lib/store';
import { readJson, writeWhole } from './whole-file';

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

/** The links of a shop: who may come in, and to do what. */
export class Links {
	readonly #path: string;
	#links: readonly KeptLink[];

	private constructor(path: string, links: readonly KeptLink[]) {
		this.#path = path;
		this.#links = links;
	}

	/** Rejects when the file cannot be read, or is none of ours: nobody is let in by mistake. */
	static async in(path: string): Promise<Links> {
		const links = (await readJson(path)) ?? [];
		if (!Array.isArray(links) || !links.every(isLink)) throw new TypeError(`${path} is torn.`);
		return new Links(path, links);
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

	/** Its secret is told this once; null when there are too many. */
	async make(name: string, right: Right): Promise<string | null> {
		if (this.#links.length >= MOST) return null;
		const secret = randomBytes(18).toString('base64url');
		const id = randomBytes(6).toString('hex');
		const made = Date.now();
		const link = { id, name: name.slice(0, LONGEST_NAME), right, hash: hashOf(secret), made };
		await this.#put([...this.#links, link]);
		return secret;
	}

	/** Another link by which all may be done must be left. False when there is none, or no such. */
	async withdraw(id: string): Promise<boolean> {
		const there = this.#links.find((link) => link.id === id && link.withdrawn === undefined);
		const others = this.#links.filter((link) => link.id !== id && link.withdrawn === undefined);
		if (!there || !others.some(({ right }) => right === 'all')) return false;
		const withdrawn = Date.now();
		await this.#put(this.#links.map((link) => (link === there ? { ...link, withdrawn } : link)));
		return true;
	}

	async #put(links: readonly KeptLink[]): Promise<void> {
		await writeWhole(this.#path, links);
		this.#links = links;
	}
}

function isLink(link: unknown): link is KeptLink {
	const { id, hash, name, right } = (link ?? {}) as Record<string, unknown>;
	return [id, hash, name].every((text) => typeof text === 'string') && isRight(right);
}

export const isRight = (right: unknown): right is Right => RIGHTS.some((one) => one === right);
