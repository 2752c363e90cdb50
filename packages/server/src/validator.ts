import { Ajv } from 'ajv';
import type { FastifySchemaCompiler } from 'fastify';

/** Words of our own in schemas, and words of OpenAPI. */
const ownWords = ['x-contract', 'hide', 'operationId', 'summary', 'tags'];

/** What stands in an address is text and is read as the number it is meant to be. */
const ofAddress = new Ajv({ coerceTypes: 'array', useDefaults: true, removeAdditional: true }).addVocabulary(ownWords);

/** What is sent is taken as it is: nothing is turned into another type, nothing that has no place is dropped without a word. */
const ofBody = new Ajv({
  coerceTypes: false,
  useDefaults: false,
  removeAdditional: false,
  allowUnionTypes: true,
}).addVocabulary(ownWords);

export const compileValidator: FastifySchemaCompiler<object> = ({ schema, httpPart }) =>
  (httpPart === 'body' ? ofBody : ofAddress).compile(schema);
