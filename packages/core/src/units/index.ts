export type { UnitFinding } from './parse-unit.ts';
export { clockSeconds, fromBench, parseUnit, toBench } from './parse-unit.ts';
export { dayAfter, readTypedDay, readTypedTime, type TypedDay, type TypedTime } from './typed-day.ts';
export { readTypedNumber, type TypedNumber, type TypedNumberField } from './typed-number.ts';
export type { Dimension, Unit } from './unit.ts';
export { AMBIGUOUS_UNITS, FACTOR_SOURCES, UNITS } from './unit.ts';
