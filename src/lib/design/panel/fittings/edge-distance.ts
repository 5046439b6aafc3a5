import { mm } from '../../../measure';

/*
 * Board that is left between a hole and the edge of what it is made in; with less it breaks out.
 */

/**
 * From the middle of a screw to the edge of a board, at least: industry guide for medium density
 * fibreboard.
 */
export const SCREW_EDGE = mm(12);

/** From the rim of any other hole to the edge, or to the groove. Common practice, no source. */
export const RIM = mm(4);

/** On either side of a magnet in the rim that rests on a ledge. Common practice, no source. */
export const MAGNET_RIM = mm(2);
