export { layBoards } from './all-boards';
export { allSavings } from './all-savings';
export { pieces } from './board-problem';
export { bookingOf, pinSheet, unpinSheet } from './booking';
export { heldOn, layByHand, letAllGo, letGo } from './hand-edits';
export { offcutLabels } from './offcut-labels';
export { packetsOf, type Stack } from './packets-of';
export { boundText, proofText } from './proof';
export type { Saving } from './savings';
