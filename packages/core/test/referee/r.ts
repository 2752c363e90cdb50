import { after } from 'node:test';
import { WebR } from 'webr';

let started: Promise<WebR> | null = null;

/** R itself (compiled to WebAssembly), started once for a test file and closed after its last test. */
export function withR<T>(work: (r: WebR) => Promise<T>): Promise<T> {
  started ??= start();
  return started.then(work);
}

async function start(): Promise<WebR> {
  const r = new WebR();
  await r.init();
  return r;
}

after(async () => {
  if (started) (await started).close();
});

/**
 * The numbers which an R expression yields, with the vectors of `data` bound to their names first.
 * Missing values come back as NaN.
 */
export async function numbersFromR(
  r: WebR,
  expression: string,
  data: Readonly<Record<string, readonly number[]>> = {},
): Promise<number[]> {
  for (const [name, values] of Object.entries(data)) await r.objs.globalEnv.bind(name, [...values]);
  const found = await r.evalR(`as.numeric({ ${expression} })`);
  const values = await (found as unknown as { toArray(): Promise<(number | null)[]> }).toArray(); // as.numeric yields a double vector
  await r.destroy(found);
  return values.map((value) => value ?? Number.NaN);
}
