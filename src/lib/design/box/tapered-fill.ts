import type { Box } from '../../job/box';
import { sayMissed } from './cleat';
import type { Board } from './board';
import { mount, type Inside } from './inside';
import type { Rack } from './rack';
import type { Seam } from './seam';
import type { TaperedShell } from './tapered';
import { braceTapered } from './tapered-brace';
import { taperedCleats } from './tapered-cleats';
import { divideTapered, type TaperedRoom } from './tapered-divide';
import { layersInside, layersOutside } from './tapered-layers';
import type { Trouble } from './trouble';
import { slotSetups } from './slot-setup';
import type { Taken } from './volume';

/** Fills a double-tapered box: layers, dividers, braces, cleats, then what is mounted on its walls. */
export function fillTapered(box: Box, shell: TaperedShell, rack: Rack, trouble: Trouble): Inside {
	const doubled = layersInside(box, shell.air, rack, trouble);
	const overlays = layersOutside(box, shell, rack, trouble);
	const divided = divideTapered(box, shell.air, doubled.air, rack, trouble);
	const { rooms } = divided;
	const walls = [...shell.boards, ...doubled.boards, ...overlays.boards];
	// Slots are refused in words: their boards would have to twist with the leaning walls.
	slotSetups(box, { boards: walls, rooms, section: null }, rack, trouble);
	const braced = braceTapered(box, rooms, shell.inner, rack, trouble);
	const cleated = cleatAll(box, rooms, braced.boards, rack, trouble);
	const taken: Taken[] = [
		...rooms.map((r, room) => ({ room, what: 'Doubled boards', volume: r.gross - r.air.volume })),
		...braced.taken.map((volume, room) => ({ room, what: 'Braces', volume })),
		...cleated.taken.map((volume, room) => ({ room, what: 'Cleats', volume })),
	];
	const made = [doubled, overlays, divided, braced, cleated];
	const stage = {
		boards: [...walls, ...divided.boards, ...braced.boards, ...cleated.boards],
		seams: [...shell.seams, ...made.flatMap((m) => m.seams)],
		rooms,
		taken,
		rods: braced.rods,
		obstacles: braced.obstacles,
	};
	return mount(box, stage, [], null, rack, trouble);
}

function cleatAll(
	box: Box,
	rooms: readonly TaperedRoom[],
	braces: readonly Board[],
	rack: Rack,
	trouble: Trouble,
): { boards: readonly Board[]; seams: readonly Seam[]; taken: readonly number[] } {
	const wish = box.cleats;
	const material = wish && rack.of(wish.material, ['cleats', 'material']);
	if (!wish || !material) return { boards: [], seams: [], taken: rooms.map(() => 0) };
	const boards: Board[] = [];
	const seams: Seam[] = [];
	const missed = new Set<string>();
	const taken = rooms.map((room) => {
		const made = taperedCleats(room, wish, material, braces, boards.length + 1);
		boards.push(...made.boards);
		seams.push(...made.seams);
		for (const corner of made.missed) missed.add(corner);
		return made.taken;
	});
	sayMissed(wish, missed, trouble);
	return { boards, seams, taken };
}
