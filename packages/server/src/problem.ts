/** One kind of problem: its status never changes, its title does not depend on the case (RFC 9457, 3.1). */
interface ProblemKind {
  readonly status: number;
  readonly title: string;
}

/** Every problem the server can answer with. Codes are stable: a client may rely on them. */
export const problemKinds = {
  'address-malformed': { status: 400, title: 'The address is not well formed' },
  'body-malformed': { status: 400, title: 'What was sent is not well formed' },
  'origin-refused': { status: 403, title: 'Another site may not write here' },
  'address-unknown': { status: 404, title: 'There is nothing at this address' },
  'campaign-unknown': { status: 404, title: 'No such campaign' },
  'curve-unknown': { status: 404, title: 'No curve for this pull' },
  'report-unknown': { status: 404, title: 'No report for this campaign' },
  'record-unknown': { status: 404, title: 'No such row or file in the record' },
  'rig-unknown': { status: 404, title: 'No such rig' },
  'method-refused': { status: 405, title: 'This is not answered here' },
  'record-conflict': { status: 409, title: 'Somebody changed this meanwhile' },
  'pull-refused': { status: 409, title: 'The rig does not do this now' },
  'host-refused': { status: 421, title: 'The record is not served under this host name' },
  'entry-refused': { status: 422, title: 'This cannot be entered as it stands' },
  'record-at-fault': { status: 422, title: 'The record cannot be judged as it stands' },
  'server-fault': { status: 500, title: 'Something broke in the server' },
  'record-unwritable': { status: 503, title: 'The record cannot be written now' },
  'screens-not-built': { status: 503, title: 'The web screens are not built' },
} as const satisfies Record<string, ProblemKind>;

export type ProblemCode = keyof typeof problemKinds;

export const problemType = 'application/problem+json';

/** The body of a problem reply (RFC 9457), with our stable code beside the members the standard names. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly code: ProblemCode;
  /** Where the fault has a code of its own: docs/reference/errors.md. */
  readonly fault?: string;
}

/** A reply that is not the record asked for. `detail` names the place and the cure. */
export class ProblemError extends Error {
  readonly code: ProblemCode;

  constructor(code: ProblemCode, detail: string) {
    super(detail);
    this.name = 'ProblemError';
    this.code = code;
  }
}

/** Writes a problem out. Its type is an address on this server, where the kind is described. */
export function describeProblem(code: ProblemCode, detail: string): Problem {
  return { type: `/api/problems/${code}`, ...problemKinds[code], detail, code };
}

export function isProblemCode(code: string): code is ProblemCode {
  return Object.hasOwn(problemKinds, code);
}
