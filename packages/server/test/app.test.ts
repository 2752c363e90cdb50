import assert from 'node:assert/strict';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { problemKinds } from '../src/problem.ts';
import { serverBench, temporaryFolder } from './bench.ts';
import { brief, curve, finding, ledger, ledgerState, memoryPorts, reportBytes, summary } from './memory-ports.ts';

const webRoot = temporaryFolder();
await mkdir(join(webRoot, 'assets'));
await writeFile(join(webRoot, 'index.html'), '<!doctype html><title>page</title>');
await writeFile(join(webRoot, 'assets', 'main-abc.js'), 'export {};');
const faults: unknown[] = [];
const { app } = serverBench(memoryPorts, { webRoot, onFault: (error) => faults.push(error) });

const page = { accept: 'text/html,application/xhtml+xml' };

describe('the record is read whole', () => {
  const replies: readonly (readonly [string, unknown])[] = [
    ['/api/campaigns', { campaigns: [summary], next: null }],
    ['/api/campaigns/QUAY-1', finding],
    ['/api/campaigns/QUAY-1/brief', brief],
    ['/api/campaigns/QUAY-1/pulls/P-1/curve', curve],
    ['/api/campaigns/QUAY-1/ledger', ledger],
    ['/api/campaigns/QUAY-1/ledger/state', ledgerState],
  ];
  for (const [url, expected] of replies) {
    test(`${url} sends what the port says, and nothing is kept by the browser`, async () => {
      const reply = await app.inject(url);
      assert.equal(reply.statusCode, 200);
      assert.equal(reply.headers['content-type'], 'application/json; charset=utf-8');
      assert.equal(reply.headers['cache-control'], 'no-store');
      assert.match(String(reply.headers.etag), /^"[\w-]{43}"$/);
      assert.deepEqual(reply.json(), expected);
    });
  }

  test('the report comes as PDF, byte for byte, under the name of its campaign', async () => {
    const reply = await app.inject('/api/campaigns/QUAY-1/report.pdf');
    assert.equal(reply.statusCode, 200);
    assert.equal(reply.headers['content-type'], 'application/pdf');
    assert.equal(reply.headers['content-disposition'], 'inline; filename="QUAY-1.pdf"');
    assert.deepEqual(new Uint8Array(reply.rawPayload), reportBytes);
  });

  test('a client that holds these bytes already gets 304 and no body', async () => {
    const first = await app.inject('/api/campaigns/QUAY-1');
    const held = { 'if-none-match': `"other", W/${String(first.headers.etag)}` };
    const second = await app.inject({ url: '/api/campaigns/QUAY-1', headers: held });
    assert.equal(second.statusCode, 304);
    assert.equal(second.body, '');
    assert.equal(second.headers.etag, first.headers.etag);
    const other = await app.inject({ url: '/api/campaigns/QUAY-1', headers: { 'if-none-match': '"other"' } });
    assert.equal(other.statusCode, 200);
  });
});

describe('what is not the record is a problem with a stable code', () => {
  const noCampaign = 'There is no campaign NONE in this record. GET /api/campaigns lists those there are.';
  const cases = [
    ['/api/campaigns/NONE', 'campaign-unknown', noCampaign],
    ['/api/campaigns/NONE/brief', 'campaign-unknown', noCampaign],
    ['/api/campaigns/NONE/ledger', 'campaign-unknown', noCampaign],
    ['/api/campaigns/NONE/report.pdf', 'report-unknown', 'There is no report for campaign NONE.'],
    [
      '/api/campaigns/QUAY-1/pulls/P-9/curve',
      'curve-unknown',
      'Pull P-9 of campaign QUAY-1 has no recording here. A maximum keyed from the panel has none.',
    ],
    [
      '/api/campaigns/..%2Fetc',
      'address-malformed',
      'A campaign code is 1 to 64 letters, digits, points, dashes or underlines.',
    ],
    ['/api/nothing', 'address-unknown', 'There is nothing at /api/nothing.'],
  ] as const;
  for (const [url, code, detail] of cases) {
    test(`${url} is ${code}`, async () => {
      const reply = await app.inject({ url, headers: page });
      const { status, title } = problemKinds[code];
      assert.equal(reply.statusCode, status);
      assert.match(String(reply.headers['content-type']), /^application\/problem\+json(;|$)/);
      assert.equal(reply.headers['cache-control'], 'no-store');
      assert.deepEqual(reply.json(), { type: `/api/problems/${code}`, title, status, detail, code });
    });
  }

  test('a fault in the record is told in its own words, with its own code', async () => {
    const reply = await app.inject('/api/campaigns/FAULTY');
    assert.equal(reply.statusCode, 422);
    assert.deepEqual(reply.json(), {
      type: '/api/problems/record-at-fault',
      title: 'The record cannot be judged as it stands',
      status: 422,
      detail: 'products, row 1: no size 9 mm in EN 818-3.',
      code: 'record-at-fault',
      fault: 'size-unknown',
    });
  });

  test('a broken server tells the terminal what happened, and the client nothing of it', async () => {
    const reply = await app.inject('/api/campaigns/BROKEN');
    assert.equal(reply.statusCode, 500);
    assert.equal(reply.json().code, 'server-fault');
    assert.doesNotMatch(reply.body, /secret/);
    assert.match(String(faults.at(-1)), /secret detail/);
  });

  test('each problem is described at the address its type names', async () => {
    for (const [code, kind] of Object.entries(problemKinds)) {
      const reply = await app.inject(`/api/problems/${code}`);
      assert.deepEqual(reply.json(), { code, ...kind });
    }
    assert.equal((await app.inject('/api/problems/toString')).statusCode, 404);
  });

  for (const method of ['POST', 'PUT', 'PATCH', 'DELETE'] as const) {
    test(`${method} is refused: this side only reads`, async () => {
      const reply = await app.inject({ method, url: '/api/campaigns' });
      assert.equal(reply.statusCode, 405);
      assert.equal(reply.headers.allow, 'GET, HEAD');
      assert.equal(reply.json().code, 'method-refused');
    });
  }
});

describe('only this machine reads the record', () => {
  for (const host of [
    'evil.example',
    'evil.example:8480',
    'localhost.evil.example',
    '127.0.0.1.evil.example',
    'a@localhost',
  ]) {
    test(`a request for host "${host}" is refused, page or record`, async () => {
      for (const url of ['/api/campaigns', '/', '/assets/main-abc.js']) {
        const reply = await app.inject({ url, headers: { ...page, host } });
        assert.equal(reply.statusCode, 421);
        assert.equal(reply.json().code, 'host-refused');
      }
    });
  }
  for (const host of ['localhost', 'LOCALHOST:8480', '127.0.0.1:1', '[::1]:8480']) {
    test(`a request for host "${host}" is answered`, async () => {
      assert.equal((await app.inject({ url: '/api/campaigns', headers: { host } })).statusCode, 200);
    });
  }

  test('every reply carries a policy that allows this origin alone', async () => {
    for (const url of ['/', '/api/campaigns', '/api/nothing', '/assets/main-abc.js']) {
      const reply = await app.inject({ url, headers: page });
      const policy = String(reply.headers['content-security-policy']);
      assert.match(policy, /^default-src 'none'; /);
      assert.doesNotMatch(policy, /unsafe|https?:|\*|data:/);
      assert.equal(reply.headers['x-content-type-options'], 'nosniff');
      assert.equal(reply.headers['cross-origin-resource-policy'], 'same-origin');
    }
  });
});

describe('the screens', () => {
  for (const url of ['/', '/c/QUAY-1', '/c/QUAY-1/brief', '/c/QUAY-1/p/ASH-8.1']) {
    test(`${url} is the page, asked for anew each time`, async () => {
      const reply = await app.inject({ url, headers: page });
      assert.equal(reply.statusCode, 200);
      assert.match(reply.body, /<title>page/);
      assert.equal(reply.headers['cache-control'], 'no-cache');
    });
  }

  test('files with a hash in their name may be kept; missing ones are not replaced by the page', async () => {
    const script = await app.inject('/assets/main-abc.js');
    assert.equal(script.headers['cache-control'], 'public, max-age=31536000, immutable');
    assert.equal((await app.inject({ url: '/assets/gone.js', headers: page })).statusCode, 404);
  });

  test('nothing outside the screens is served', async () => {
    for (const url of ['/../app.test.ts', '/..%2f..%2fetc/passwd', '/%2e%2e/%2e%2e/etc/passwd']) {
      const reply = await app.inject(url);
      assert.ok(reply.statusCode >= 400, url);
    }
  });

  test('without built screens the page says how to build them', async () => {
    const bare = serverBench(memoryPorts, { webRoot: join(webRoot, 'none') });
    const reply = await bare.app.inject({ url: '/', headers: page });
    assert.equal(reply.statusCode, 503);
    assert.equal(reply.json().code, 'screens-not-built');
    assert.match(reply.json().detail, /npm run build/);
  });
});
