import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after } from 'node:test';
import { type OpenRecord, openRecord } from '@provinghouse/service';
import { type AppOptions, buildApp } from '../src/app.ts';
import { entryPorts } from '../src/entry-ports.ts';
import type { ServerPorts } from '../src/ports.ts';
import { recordPorts } from '../src/record-ports.ts';
import { quay } from './memory-ports.ts';

type Headers = Readonly<Record<string, string>>;

/** A server over these ports, which closes after the tests of the file, and what a client sends to it; a text goes as it stands. */
export function serverBench(ports: ServerPorts, options: AppOptions = {}) {
  const app = buildApp(ports, options);
  after(() => app.close());
  const usual = { host: 'localhost', 'content-type': 'application/json' };
  const post = (url: string, payload: string | object, headers: Headers = {}) =>
    app.inject({ method: 'POST', url, headers: { ...usual, ...headers }, payload });
  return { app, post };
}

/** A folder that is gone when the process of these tests ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'provinghouse-server-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** An empty record, which closes after the tests of the file. */
export async function emptyRecord(): Promise<OpenRecord> {
  const record = await openRecord({ home: temporaryFolder() });
  after(() => record.close());
  return record;
}

/** A server that writes into an empty record; a fault of its own fails the file. */
export async function recordBench() {
  const { effects } = await emptyRecord();
  const faults: unknown[] = [];
  after(() => assert.deepEqual(faults, []));
  const bench = serverBench(recordPorts(effects), {
    entries: entryPorts(effects),
    onFault: (error) => faults.push(error),
  });
  const sendFile = async (bytes: Buffer): Promise<string> => {
    const headers = { 'content-type': 'application/octet-stream' };
    const reply = await bench.app.inject({ method: 'PUT', url: '/api/files', payload: bytes, headers });
    return reply.json().sha256;
  };
  return { ...bench, sendFile, faults };
}

/** The same with the campaign QUAY-1 opened, and nothing in it. */
export async function campaignBench() {
  const bench = await recordBench();
  await bench.post('/api/campaigns', { campaign: quay, who: 'gauger' });
  return bench;
}
