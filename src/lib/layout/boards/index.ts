export { layBoards } from './all-boards';
export { allSavings } from './all-savings';
export { pieces } from './board-problem';
export { bookingOf, findSheet, pinnedOf, pinnedPlace, pinSheet, unpinSheet } from './booking';
export { heldOn, layByHand, letAllGo, letGo, type Which } from './hand-edits';
export { freshLabels, offcutLabels } from './offcut-labels';
export { packetsOf, type Stack } from './packets-of';
export { boundText, proofText } from './proof';
export type { Saving } from './savings';
