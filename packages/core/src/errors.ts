/** The user's input is at fault: the message names the place and the cure; nothing of it is kept. */
export class InputError extends Error {
  readonly code: string;
  /** Further facts a caller may show: choices to pick from, the row, the column. */
  readonly context: Readonly<Record<string, unknown>>;

  constructor(code: string, message: string, context: Readonly<Record<string, unknown>> = {}) {
    super(message);
    this.name = 'InputError';
    this.code = code;
    this.context = context;
  }
}

export function isInputError(error: unknown): error is InputError {
  return error instanceof InputError;
}
