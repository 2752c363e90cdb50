export type { BreakPosition, Link, LinkMaking, WeakZone } from './chain-link.ts';
export { bulkResistance_kN, drawLink, linkStiffness_kN_per_mm } from './chain-link.ts';
export type { Chain, ChainPull, Jump, JumpThatHappened } from './chain-pull.ts';
export { advanceChain, elongation_pct, startChain, storedEnergy_J } from './chain-pull.ts';
export type { Table, TableCharacter } from './hydraulic-table.ts';
export { hydraulicTable } from './hydraulic-table.ts';
export type { LineOptions } from './line-writer.ts';
export { usualPattern } from './line-writer.ts';
export { isPracticeLine, practiceLine, practiceWord } from './mark.ts';
export { practiceRegisters } from './modbus-map.ts';
export type { ModbusWireOptions } from './modbus-wire.ts';
export type { MqttWireOptions } from './mqtt-wire.ts';
export type {
  PracticeChain,
  PracticeJump,
  PracticeOperator,
  PracticeOptions,
  PracticeRig,
} from './practice-options.ts';
export type { PracticePull, PracticePullOptions } from './practice-pull.ts';
export { practicePull } from './practice-pull.ts';
export type { PracticeSession } from './practice-session.ts';
export { startPractice } from './practice-session.ts';
export type { BreakMode, PracticeTruth, TransducerTruth } from './practice-truth.ts';
export type { PtyWireOptions } from './pty-wire.ts';
export type { Random } from './random.ts';
export { stream } from './random.ts';
export type { ServePracticeOptions } from './serve-practice.ts';
export { servePractice } from './serve-practice.ts';
export type { TcpWireOptions } from './tcp-wire.ts';
export type { Transducer } from './transducer.ts';
export { indicated_kN } from './transducer.ts';
export type { Eased, Hand, HandOnValve, Hesitation, ScriptedHand } from './valve-hand.ts';
export { scriptedHand } from './valve-hand.ts';
export { variedPractice } from './varied-practice.ts';
export type { PracticeWire, WireOptions, WireProgress } from './wire.ts';
