import type { KeyboardEvent } from 'react';

/** What the keys of the page do. */
export interface Moves {
  readonly again: () => void;
  readonly skip: () => void;
  readonly undo: () => void;
  readonly along: (by: 1 | -1) => void;
  readonly across: (by: 1 | -1) => void;
  readonly piece: (by: 1 | -1) => void;
}

/** What a key means while the field is empty. */
export function keyMeaning(moves: Moves): (event: KeyboardEvent) => boolean {
  return ({ key, ctrlKey, metaKey, altKey }) => {
    const isPlain = !ctrlKey && !metaKey && !altKey;
    if ((ctrlKey || metaKey) && key.toLowerCase() === 'z') moves.undo();
    else if (!isPlain) return false;
    else if (key === 'r' || key === 'R') moves.again();
    else if (key === 's' || key === 'S') moves.skip();
    else if (key === 'ArrowLeft') moves.along(-1);
    else if (key === 'ArrowRight') moves.along(1);
    else if (key === 'ArrowUp') moves.across(-1);
    else if (key === 'ArrowDown') moves.across(1);
    else if (key === 'PageUp') moves.piece(-1);
    else if (key === 'PageDown') moves.piece(1);
    else return false;
    return true;
  };
}
