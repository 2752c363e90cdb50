import type { WatchSample } from '@provinghouse/core';
import { readAccount, type SpoolAccount } from './account.ts';

/** Samples by column; NaN where the record has no table or extension. */
export interface SampleColumns {
  readonly time_s: Float64Array;
  readonly force_kN: Float64Array;
  readonly table_mm: Float64Array;
  readonly extension_mm: Float64Array;
}

export interface Recovery extends SpoolAccount {
  readonly columns: SampleColumns;
}

/** Columns that grow. */
function growing() {
  let room = 4096;
  let used = 0;
  let columns = [0, 1, 2, 3].map(() => new Float64Array(room));
  function grow(): void {
    room *= 2;
    columns = columns.map((old) => {
      const wider = new Float64Array(room);
      wider.set(old);
      return wider;
    });
  }
  return {
    add(sample: WatchSample) {
      if (used === room) grow();
      const row = [sample.time_s, sample.force_kN, sample.table_mm ?? Number.NaN, sample.extension_mm ?? Number.NaN];
      row.forEach((value, i) => {
        const column = columns[i];
        if (column) column[used] = value;
      });
      used++;
    },
    columns(): SampleColumns {
      const [time_s, force_kN, table_mm, extension_mm] = columns.map((column) => column.slice(0, used));
      const none = new Float64Array(0);
      return {
        time_s: time_s ?? none,
        force_kN: force_kN ?? none,
        table_mm: table_mm ?? none,
        extension_mm: extension_mm ?? none,
      };
    },
  };
}

/**
 * Everything a spool holds up to its last whole frame, whatever became of the process, the power or the disc. Never throws for what is in the
 * file; what is missing is in `gaps`, `tornBytes`, `damagedBytes`, `isClosed` and, in words, `notes`.
 * @throws InputError spool/unreadable when the file cannot be opened
 */
export async function recover(path: string): Promise<Recovery> {
  const rows = growing();
  const account = await readAccount(path, (batch) => {
    for (const sample of batch) rows.add(sample);
  });
  return { ...account, columns: rows.columns() };
}
