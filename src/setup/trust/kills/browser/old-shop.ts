/*
 * A database as the first version of the planner left it, with one job that draws on the shop's
 * rack.
 */

/** Sheets on its rack. */
export const OWNED = 3;
export const NAME = 'Killed';
export const LENGTHS = [600, 300];

export const OLD_SHOP = {
	version: 10,
	stores: { jobs: ['id', 'changed'], things: ['key'] },
	rows: {
		jobs: [
			{
				id: 'killed',
				name: NAME,
				file: {
					...{ name: NAME, version: 2, stock: {}, shop: {} },
					parts: [
						{ id: 'P1', material: 'ply-18', length: LENGTHS[0], width: 400 },
						{ id: 'P2', material: 'ply-18', length: LENGTHS[1], width: 200, count: 2 },
					],
				},
				changed: 1_790_000_000_000,
				sharesRack: true,
			},
		],
		things: [
			{ key: 'open', value: 'killed' },
			{
				key: 'rack',
				value: {
					version: 2,
					stock: {
						materials: [{ id: 'ply-18', name: 'Birch plywood', nominal: 18, measured: 17.6 }],
						sheets: [{ id: 's', material: 'ply-18', length: 2440, width: 1220, owned: OWNED }],
					},
					shop: { currency: 'EUR' },
				},
			},
		],
	},
};

type OldShop = typeof OLD_SHOP;

/** Runs in a page of the planner's address that is not the planner. */
export function putOldShop({ version, stores, rows }: OldShop): Promise<void> {
	return new Promise((resolve, reject) => {
		const request = indexedDB.open('kerf-and-nap', version);
		request.onupgradeneeded = () => {
			for (const [table, [key = '', index]] of Object.entries(stores)) {
				const made = request.result.createObjectStore(table, { keyPath: key });
				if (index !== undefined) made.createIndex(index, index);
			}
		};
		request.onerror = () => reject(request.error ?? new Error('not made'));
		request.onsuccess = () => {
			const db = request.result;
			const change = db.transaction(Object.keys(stores), 'readwrite');
			for (const [table, list] of Object.entries(rows))
				for (const row of list) change.objectStore(table).put(row);
			change.oncomplete = () => {
				db.close();
				resolve();
			};
		};
	});
}
