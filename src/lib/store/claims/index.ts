export { fallenWords, lostWords } from './claim-words';
export { ClaimedRack, stockHeld, stockOnRack } from './claimed-rack';
export type { NetRack } from './net-rack';
