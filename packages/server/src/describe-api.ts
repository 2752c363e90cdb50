import { buildApp } from './app.ts';

/** The OpenAPI document of the whole server, the rigs included, without a record: nothing is asked for, so no port is ever called. */
export async function describeApi(): Promise<object> {
  // Whatever is read of them is handed to a route and never called here.
  const uncalled = new Proxy({}, { get: () => uncalledPort }) as never;
  const app = buildApp(uncalled, { entries: uncalled, rigs: uncalled });
  try {
    return (await app.inject('/api/openapi.json')).json();
  } finally {
    await app.close();
  }
}

function uncalledPort(): never {
  throw new Error('no port is called while the API is described');
}
