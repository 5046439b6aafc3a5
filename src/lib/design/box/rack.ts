import { type Path, type Box, type BoardKey, type Job, type Material, materialOf } from '../../job';
import type { ProblemLog } from '../problem-log';

/** Looks up the boards a box asks for and tells once what is not on the rack. */
export class BoardRack {
	private readonly told = new Set<string>();
	constructor(
		private readonly box: Pick<Box, 'material' | 'boards'>,
		private readonly job: Pick<Job, 'stock'>,
		private readonly log: ProblemLog,
	) {}

	/** The material of a wall: its own, or the one of the box. */
	ofWall(key: BoardKey): Material | null {
		const own = this.box.boards[key]?.material;
		return own === undefined
			? this.find(this.box.material, ['material'])
			: this.find(own, ['boards', key, 'material']);
	}

	/** A material named somewhere in the box, or the one of the box when none is named. */
	of(name: string | undefined, path: Path): Material | null {
		return name === undefined ? this.find(this.box.material, ['material']) : this.find(name, path);
	}

	private find(name: string, path: Path): Material | null {
		const found = materialOf(this.job, name);
		if (this.told.has(name)) return found;
		this.told.add(name);
		if (!found) {
			const known = this.job.stock.materials.map((m) => m.id).slice(0, 8);
			this.log.stop(
				path,
				`There is no board '${name}' on the rack.`,
				known.length > 0 ? `Choose one of ${known.join(', ')}, or add it.` : 'Add it to the rack.',
			);
			return null;
		}
		return found;
	}
}
