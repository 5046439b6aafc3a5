export { type Body, type Facet, NOWHERE, type Tone } from './body';
export { boxBodies } from './box-bodies';
export { openingLines, panelBodies } from './panel-bodies';
export { spaceLines } from './space';
