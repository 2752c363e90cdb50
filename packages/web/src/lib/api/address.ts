import type { paths } from './paths.ts';

type Method = 'get' | 'post';

type Operation<M extends Method, P extends keyof paths> = paths[P] extends { readonly [K in M]: infer O } ? O : never;

type JsonOf<R> = R extends { readonly content: { readonly 'application/json': infer J } } ? J : never;

/** What an operation answers when it does what was asked. */
export type AnswerOf<M extends Method, P extends keyof paths> =
  Operation<M, P> extends { readonly responses: { readonly 200: infer R } } ? JsonOf<R> : never;

/** What an operation is sent. */
export type BodyOf<P extends keyof paths> =
  Operation<'post', P> extends { readonly requestBody: infer B } ? JsonOf<B> : never;

type ParametersOf<M extends Method, P extends keyof paths> =
  Operation<M, P> extends { readonly parameters: infer Q } ? Q : never;

type PathParts<M extends Method, P extends keyof paths> =
  ParametersOf<M, P> extends { readonly path: infer V } ? V : Readonly<Record<never, string>>;

type QueryParts<M extends Method, P extends keyof paths> =
  ParametersOf<M, P> extends { readonly query?: infer V } ? V : never;

/** An address of the API that carries the type of what it answers; the member `answers` is never there. */
export interface Address<T> {
  readonly url: string;
  readonly answers?: T;
}

interface Parts<M extends Method, P extends keyof paths> {
  readonly path?: PathParts<M, P>;
  readonly query?: QueryParts<M, P>;
}

/** The address at which an operation is read. Parts of the path are written so that any code fits. */
export function readAt<P extends keyof paths>(path: P, parts: Parts<'get', P> = {}): Address<AnswerOf<'get', P>> {
  return { url: urlOf(path, parts.path ?? {}, parts.query ?? {}) };
}

/** The address to which something is sent. */
export function sendAt<P extends keyof paths>(path: P, parts: Parts<'post', P> = {}): Address<AnswerOf<'post', P>> {
  return { url: urlOf(path, parts.path ?? {}, parts.query ?? {}) };
}

function urlOf(path: string, parts: object, query: object): string {
  const filled = path.replace(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(Reflect.get(parts, name))));
  const asked = Object.entries(query).filter(([, value]) => value !== undefined && value !== null);
  if (asked.length === 0) return filled;
  return `${filled}?${new URLSearchParams(asked.map(([name, value]) => [name, String(value)]))}`;
}
