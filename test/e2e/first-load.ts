import { gzipSync } from 'node:zlib';

/** Script that a screen needs before it can be used, gzip as a server would send it, in kB: what the page names and what that imports at once. */
export async function scriptsOfFirstLoad(address: string, path: string): Promise<number> {
  const html = await (await fetch(`${address}${path}`, { headers: { accept: 'text/html' } })).text();
  const named = [...html.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g)].map((match) => match[1] ?? '');
  const seen = new Map<string, number>();
  const read = async (url: string): Promise<void> => {
    if (seen.has(url)) return;
    seen.set(url, 0);
    const text = await (await fetch(`${address}${url}`)).text();
    seen.set(url, gzipSync(text).length / 1000);
    const imported = [...text.matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)].map((match) => `/assets/${match[1]}`);
    await Promise.all(imported.map(read));
  };
  await Promise.all(named.map(read));
  return [...seen.values()].reduce((sum, size) => sum + size, 0);
}
