export { type Crossing, crossings, onOneLine } from './crossing';
export { distanceTo, type Where, whereIs } from './inside';
export { finder, liesIn } from './lies-in';
export { type Circle, circleCircle, type Line, lineCircle, lineLine } from './meet';
