import type { Desk } from '../state';

/**
 * Throws a job away for all devices of the shop, or puts it back (null); nothing without a shop,
 * nor by who may only look, whose trash is his own.
 *
 * @param at milliseconds since 1970
 */
export async function throwForShop(desk: Desk, id: string, at: number | null): Promise<void> {
	if (!desk.shared.membership || !desk.mayEdit) return;
	const { shelf } = await desk.documents();
	const { throwForAll } = await import('../../store/sharing/shared-trash');
	await throwForAll(shelf, id, at);
	desk.shared.sharing?.carrier.look();
}
