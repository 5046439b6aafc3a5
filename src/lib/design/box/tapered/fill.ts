import { nth } from '../../../measure';
import type { Box } from '../../../job';
import { cleatAll, mount, stageOf, type Inside } from '../inside';
import type { BoardRack } from '../rack';
import type { TaperedShell } from './tapered';
import { braceTapered } from './brace';
import { taperedCleats } from './cleats';
import { divideTapered } from './divide';
import { layersInside, layersOutside } from './layers';
import type { ProblemLog } from '../../problem-log';
import { slotSetups } from '../vent';

/**
 * Fills a double-tapered box: layers, dividers, braces, cleats, then what is mounted on its walls.
 */
export function fillTapered(
	box: Box,
	shell: TaperedShell,
	rack: BoardRack,
	log: ProblemLog,
): Inside {
	const doubled = layersInside(box, shell.air, rack, log);
	const overlays = layersOutside(box, shell, rack, log);
	const divided = divideTapered(box, shell.air, doubled.air, rack, log);
	const { rooms } = divided;
	const walls = [...shell.boards, ...doubled.boards, ...overlays.boards];
	// Slots are refused in words: their boards would have to twist with the leaning walls.
	slotSetups(box, { boards: walls, rooms, section: null }, rack, log);
	const braced = braceTapered(box, rooms, shell.inner, rack, log);
	const cleated = cleatAll(
		box,
		rooms.length,
		(r, wish, material, first) =>
			taperedCleats(nth(rooms, r), wish, material, braced.boards, first),
		rack,
		log,
	);
	const made = { shell, doubled, overlays, divided, braced, cleated };
	return mount(box, stageOf(walls, made), { slots: [], section: null }, rack, log);
}
