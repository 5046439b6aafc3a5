import type { Asked, Row } from '../row';
import { killedBrowser } from './browser';
import { killedCommands } from './command-line';

/** Processes ended at random moments, as a cut of the power or a crash would. */
export async function kills(asked: Asked): Promise<Row[]> {
	return [await killedCommands(asked), await killedBrowser(asked)];
}
