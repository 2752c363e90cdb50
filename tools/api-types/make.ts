import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { describeApi } from '@provinghouse/server';
import openapiTS, { astToString } from 'openapi-typescript';
import ts from 'typescript';

/** Makes the types of the client from the document the server serves: node tools/api-types/make.ts */

export const typesFile = fileURLToPath(new URL('../../packages/web/src/lib/api/paths.ts', import.meta.url));

const contractKey = 'x-contract';
const head = `// Made from the OpenAPI document of the server by tools/api-types/make.ts; a test keeps it true. Do not edit.
import type * as contract from '@provinghouse/contract';

`;

/** The types as they follow from the server of this tree. */
export async function clientTypes(): Promise<string> {
  const document = (await describeApi()) as Parameters<typeof openapiTS>[0];
  const nodes = await openapiTS(document, {
    alphabetize: true,
    immutable: true,
    transform: (schema) => {
      const name: unknown = Reflect.get(schema, contractKey);
      return typeof name === 'string' ? ts.factory.createTypeReferenceNode(`contract.${name}`) : undefined;
    },
  });
  return `${head}${astToString(nodes)}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const types = await clientTypes();
  const held = await readFile(typesFile, 'utf8').catch(() => '');
  if (held !== types) await writeFile(typesFile, types);
  console.log(held === types ? 'The types of the client are as they were.' : `Written: ${typesFile}`);
}
