import { type Kysely, type Migration, sql } from 'kysely';

/** The further parts of a long blob: they are written one by one before the row of the blob, which is what makes them part of the record. */
export const blobPart: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('blob_part')
      .addColumn('sha256', 'text', (column) => column.notNull())
      .addColumn('place', 'integer', (column) => column.notNull())
      .addColumn('bytes', 'blob', (column) => column.notNull())
      .addPrimaryKeyConstraint('blob_part_key', ['sha256', 'place'])
      .execute();
    await refuse(db, { name: 'no_update', before: 'update', when: '1' });
    await refuse(db, { name: 'no_delete', before: 'delete', when: isBlob('old') });
    await refuse(db, { name: 'no_addition', before: 'insert', when: isBlob('new') });
    const same = 'exists (select 1 from blob_part where sha256 = new.sha256 and place = new.place)';
    await refuse(db, { name: 'no_replacement', before: 'insert', when: same });
  },
};

function isBlob(row: 'old' | 'new'): string {
  return `exists (select 1 from blob where sha256 = ${row}.sha256)`;
}

interface Refusal {
  readonly name: string;
  readonly before: 'update' | 'delete' | 'insert';
  readonly when: string;
}

async function refuse(db: Kysely<unknown>, { name, before, when }: Refusal): Promise<void> {
  await sql`create trigger ${sql.id(`blob_part_${name}`)} before ${sql.raw(before)} on blob_part
    when ${sql.raw(when)} begin select raise(abort, 'a blob never changes'); end`.execute(db);
}
