export { fallenWords, type HeldLine, heldLines, lostWords } from './claim-words';
export { ClaimedRack, stockHeld, stockOnRack } from './claimed-rack';
export { heldAnew, MARK } from './held';
export type { NetRack } from './net-rack';
export { unsettle } from './settled';
