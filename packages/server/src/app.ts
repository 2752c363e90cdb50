import { fileURLToPath } from 'node:url';
import fastifyWebsocket from '@fastify/websocket';
import fastify, { type FastifyInstance, type FastifyReply } from 'fastify';
import { addApi } from './api.ts';
import { addEntryApi } from './entry-api.ts';
import type { EntryPorts } from './entry-ports.ts';
import { faultProblem } from './fault-problem.ts';
import { addHeaders } from './headers.ts';
import { isHostAllowed, loopbackNames } from './host-check.ts';
import { addOpenApi } from './open-api.ts';
import type { ServerPorts } from './ports.ts';
import { describeProblem, type Problem, type ProblemCode, ProblemError, problemKinds, problemType } from './problem.ts';
import { addRigApi } from './rig-api.ts';
import type { RigPorts } from './rig-ports.ts';
import { addSamplesApi } from './samples-api.ts';
import { addScreens } from './screens.ts';
import { compileValidator } from './validator.ts';

export interface AppOptions {
  /** Folder of the built screens; by default that of the web package. */
  readonly webRoot?: string;
  /** Host names answered to, without port; by default those of the loopback. */
  readonly hostNames?: readonly string[];
  /** Where entries are written; without it the server only reads. */
  readonly entries?: EntryPorts;
  /** The rigs of this bench. */
  readonly rigs?: RigPorts;
  /** Told of each fault of the server, which the client only hears of in general words. */
  readonly onFault?: (error: unknown) => void;
}

const ownScreens = fileURLToPath(new URL('../../web/dist/', import.meta.url));

/**
 * Builds the server without listening. Without ports to write through every method but reading is refused with 405.
 * Replies that are not the record asked for are problems of RFC 9457, with the codes of {@link problemKinds}.
 */
export function buildApp(ports: ServerPorts, options: AppOptions = {}): FastifyInstance {
  const app = fastify({ logger: false, routerOptions: { maxParamLength: 256 } });
  const names = options.hostNames ?? loopbackNames;
  addHeaders(app);
  app.addHook('onRequest', async (request) => {
    if (isHostAllowed(request.headers.host, names)) return;
    throw new ProblemError(
      'host-refused',
      `Open the record under ${names.map((name) => `http://${name}`).join(' or ')}.`,
    );
  });
  app.setErrorHandler((error, _request, reply) => sendProblem(reply, problemOf(error, options.onFault)));
  // A form of another site may send plain text without being asked first; only JSON, and the bytes of files, are read.
  app.removeContentTypeParser('text/plain');
  app.setValidatorCompiler(compileValidator);
  addOpenApi(app);
  addRigs(app, options.rigs);
  app.register(async (scope) => {
    if (options.entries) addEntryApi(scope, options.entries);
    if (options.entries) addSamplesApi(scope, options.entries);
    addApi(scope, ports);
  });
  addScreens(app, options.webRoot ?? ownScreens);
  return app;
}

/** Viewers have nothing to say, so their messages may be short and are never unpacked. */
const websocketOptions = { options: { maxPayload: 1024, perMessageDeflate: false } };

function addRigs(app: FastifyInstance, rigs: RigPorts | undefined): void {
  if (!rigs) return;
  app.register(fastifyWebsocket, websocketOptions);
  app.register(async (scope) => addRigApi(scope, rigs));
}

function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  return reply.code(problem.status).type(problemType).send(problem);
}

function problemOf(error: unknown, onFault: AppOptions['onFault']): Problem {
  if (error instanceof ProblemError) return describeProblem(error.code, error.message);
  const known = faultProblem(error);
  if (known !== null) return known;
  const body = bodyFaultOf(error);
  if (body !== null) return describeProblem('body-malformed', body);
  const malformed = statusOf(error);
  if (malformed !== null)
    return describeProblem(malformed, 'A campaign code is 1 to 64 letters, digits, points, dashes or underlines.');
  onFault?.(error);
  return describeProblem(
    'server-fault',
    'The record was not changed. The terminal in which the server runs says more.',
  );
}

/** The framework's own refusals: an address its schema or its router does not take. */
function statusOf(error: unknown): ProblemCode | null {
  const status = typeof error === 'object' && error !== null && 'statusCode' in error ? error.statusCode : null;
  return status === problemKinds['address-malformed'].status ? 'address-malformed' : null;
}

/** What the framework found wrong with a body, in its words; null where the body is not at fault. */
function bodyFaultOf(error: unknown): string | null {
  if (!(error instanceof Error)) return null;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  const isBody = 'validationContext' in error && error.validationContext === 'body';
  return isBody || code.startsWith('FST_ERR_CTP_') ? error.message : null;
}
