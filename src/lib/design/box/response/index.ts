export { qsOf } from './data';
export { tunedTogether } from './radiator';
export { sayRadiatorData, sayTuning } from './radiator-words';
export { responsesOf } from './response';
