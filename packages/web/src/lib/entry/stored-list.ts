interface Stored<T> {
  readonly turn: number;
  readonly value: T;
}

/**
 * A list in this browser's own store that several windows add to and take from. Each item lies under a key of its own: windows
 * may run in different processes, each with a copy of the store, and a list under one key loses what two of them add at once.
 */
export class StoredList<T> {
  readonly #prefix: string;

  constructor(name: string) {
    this.#prefix = `${name} `;
  }

  /** Items by the time they were added. */
  all(): readonly T[] {
    return this.#stored().map(({ value }) => value);
  }

  /** Adds an item, or puts another in its place in the row. It is in the store before this returns; false where the store is full. */
  put(id: string, value: T): boolean {
    const key = `${this.#prefix}${id}`;
    const [held] = read<T>(key);
    // The clock orders what several windows add; where it was set back, what is added still comes last.
    const turn = held?.turn ?? Math.max(Date.now(), 1 + (this.#stored().at(-1)?.turn ?? 0));
    try {
      localStorage.setItem(key, JSON.stringify({ turn, value } satisfies Stored<T>));
      return true;
    } catch {
      return false;
    }
  }

  remove(id: string): void {
    localStorage.removeItem(`${this.#prefix}${id}`);
  }

  /** Whether a change of the store under this key, or of the whole store (null), is one of this list. */
  holds(key: string | null): boolean {
    return key === null || key.startsWith(this.#prefix);
  }

  #stored(): readonly Stored<T>[] {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(this.#prefix))
      .flatMap(read<T>)
      .sort((a, b) => a.turn - b.turn);
  }
}

function read<T>(key: string): readonly Stored<T>[] {
  try {
    const held = localStorage.getItem(key);
    // Written above only; what cannot be read any more is of no use to anybody.
    return held === null ? [] : [JSON.parse(held) as Stored<T>];
  } catch {
    return [];
  }
}
