export { boundMet, meetsBound, sawAnswer } from './answer';
