import type { ChannelReport, WireFinding, WireReport } from '@provinghouse/contract';

/** A wire is given this long before its silence counts, s. */
const PATIENCE_S = 2;
/** A channel that shows one and the same value is doubted after this long and so many readings. */
const STILL_S = 5;
const STILL_READINGS = 20;
/** Pieces that give no reading before the pattern is doubted. */
const UNREAD_PIECES = 5;
/** Of pieces that are no text, which may be a second of bytes each, fewer will do. */
const GARBLED_PIECES = 3;
/** Share of pieces without a reading that is worth a word. */
const UNREAD_SHARE = 0.01;
/** A clock that differs by more than this is not one that only drifts. */
const CLOCK_SHARE = 0.02;

/**
 * What is wrong on the wires, or may be, the gravest first; none when all channels are heard and nothing is doubtful. The limits are this project's own
 * (common practice).
 */
export function wireFindings(reports: readonly WireReport[]): WireFinding[] {
  const found = reports.map((report) => ({ grave: graveOf(report), light: lightOf(report) }));
  return [...signalFindings(reports), ...found.flatMap(({ grave }) => grave), ...found.flatMap(({ light }) => light)];
}

/** Exactly one channel must be the force, and no signal may come twice: what a recording would refuse later. */
function signalFindings(reports: readonly WireReport[]): WireFinding[] {
  const channels = reports.flatMap((report) => report.channels);
  const named = (signal: string) => channels.filter((one) => one.signal === signal).map(({ channel }) => channel);
  const twice = ['force', 'table', 'extension'].filter((signal) => named(signal).length > 1);
  return [
    ...(named('force').length === 0 ? [{ kind: 'no force' } as const] : []),
    ...twice.map((signal): WireFinding => ({ kind: 'two of a kind', signal, channels: named(signal) })),
  ];
}

/** What keeps a source from being read at all; one at most. */
function graveOf(report: WireReport): WireFinding[] {
  const { describe: source, isOpen, seconds, bytes, channels, rejected, garbledShare, reasons, pattern } = report;
  const readings = channels.reduce((sum, channel) => sum + channel.readings, 0);
  const example = reasons[0]?.example ?? '';
  if (isOpen === false) return [{ kind: 'away', source, words: report.troubles.at(-1) ?? null }];
  if (rejected >= GARBLED_PIECES && garbledShare > 0.5 && rejected > readings)
    return [{ kind: 'garbled', source, example }];
  if (readings === 0 && rejected >= UNREAD_PIECES) return [{ kind: 'none read', source, pattern, example }];
  if (seconds < PATIENCE_S) return [];
  if (bytes === 0 && readings === 0) return [{ kind: 'silent', source, seconds }];
  const quiet_s = Math.min(...channels.map(({ sinceLast_s }) => sinceLast_s ?? Number.POSITIVE_INFINITY));
  if (readings > 0 && quiet_s > PATIENCE_S) return [{ kind: 'fell silent', source, seconds: quiet_s }];
  return [];
}

function lightOf(report: WireReport): WireFinding[] {
  const { describe: source, channels, rejected, reasons, seconds, clockRatio } = report;
  const heard = channels.filter(({ readings }) => readings > 0);
  if (heard.length === 0) return [];
  const missing = seconds < PATIENCE_S ? [] : channels.filter(({ readings }) => readings === 0);
  const most = Math.max(...heard.map(({ readings }) => readings));
  const share = rejected / (rejected + most);
  const [reason] = reasons;
  return [
    ...missing.map(({ channel }): WireFinding => ({ kind: 'channel missing', source, channel })),
    ...(reason && share > UNREAD_SHARE
      ? [{ kind: 'some unread', source, share, why: reason.why, example: reason.example } as const]
      : []),
    ...heard.flatMap((channel) => doubtsOf(channel, seconds)),
    ...(clockRatio !== null && Math.abs(clockRatio - 1) > CLOCK_SHARE
      ? [{ kind: 'clock', source, ratio: clockRatio } as const]
      : []),
  ];
}

function doubtsOf({ channel, benchUnit, ...report }: ChannelReport, seconds: number): WireFinding[] {
  const { doubts, last, least, greatest, readings, outOfRange } = report;
  const newest = new Map(doubts.map((doubt) => [doubt.kind, doubt]));
  const isStill = least === greatest && readings >= STILL_READINGS && seconds >= STILL_S;
  return [
    ...[...newest.values()].map(({ kind, words }): WireFinding => ({ kind: 'doubt', channel, doubt: kind, words })),
    ...(outOfRange > 0 ? [{ kind: 'out of range', channel, count: outOfRange } as const] : []),
    ...(isStill && last !== null ? [{ kind: 'still', channel, value: last, unit: benchUnit } as const] : []),
  ];
}
