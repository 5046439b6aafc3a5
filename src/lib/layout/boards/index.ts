export { pieces } from './board-problem';
export { layBoards } from './boards';
export { bookCut, pinSheet, unpinSheet } from './booking';
export { offcutLabels } from './offcut-labels';
export { packetsOf, type Stack } from './packets-of';
export { boundText, proofText } from './proof';
export { boardSavings, type Saving } from './savings';
