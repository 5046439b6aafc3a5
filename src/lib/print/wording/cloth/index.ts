export { CARPET_HEADS, carpetWays } from './carpet-text';
export { CUT_WAY_HEADS, cutAsText, cutWays } from './cut-ways-text';
export { patternText } from './pattern-text';
