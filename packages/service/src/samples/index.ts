export { blindAlphabet, blindCodes, type Draw, openCodes } from './codes.ts';
export { cutSample } from './cut.ts';
export { type LabelsAsked, labelsOf } from './labels.ts';
