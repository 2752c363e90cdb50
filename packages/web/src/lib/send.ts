import { type Fault, faultOf, type Reply } from './request.ts';
import { text } from './text.ts';

/** Sends something to one address of the API and reads what is said back. */
export async function send<T>(url: string, body: object): Promise<Reply<T>> {
  try {
    const headers = { 'content-type': 'application/json' };
    const reply = await fetch(url, { method: 'POST', cache: 'no-store', headers, body: JSON.stringify(body) });
    if (!reply.ok) return { ok: false, fault: await faultOf(reply) };
    // The server of the same build sends the shape of the contract.
    const record: T = await reply.json();
    return { ok: true, record };
  } catch {
    const fault: Fault = { code: 'no-answer', detail: text.fault.offline };
    return { ok: false, fault };
  }
}
