import { InputError } from '@provinghouse/core';

/** A day of the calendar. */
export interface IssueDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * The day of issue in its parts.
 *
 * @throws InputError `report/issue-date` when it is not a day of the calendar written as YYYY-MM-DD
 */
export function issueDay(issuedOn: string): IssueDay {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(issuedOn) ? new Date(`${issuedOn}T00:00:00Z`) : new Date(Number.NaN);
  if (Number.isNaN(at.getTime()) || at.toISOString().slice(0, 10) !== issuedOn) {
    throw new InputError('report/issue-date', `The day of issue "${issuedOn}" is not a day written as YYYY-MM-DD.`, {
      issuedOn,
    });
  }
  return { year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, day: at.getUTCDate() };
}
