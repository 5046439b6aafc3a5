export type { Claim } from './claim';
export { fallenWords, lostWords } from './claim-words';
export { ClaimedRack, stockIn, stockOnRack } from './claimed-rack';
export type { NetRack } from './net-rack';
