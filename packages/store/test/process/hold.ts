/** Holds the record named on the command line for writing, says so, and waits to be ended. */
import { DatabaseSync } from 'node:sqlite';

const [, , path = ''] = process.argv;
const database = new DatabaseSync(path);
database.exec('BEGIN EXCLUSIVE');
process.stdout.write('held\n');
setInterval(() => undefined, 1000);
