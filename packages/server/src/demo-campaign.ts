import { fileURLToPath } from 'node:url';
import { bringIn, type Effects } from '@provinghouse/service';

const demoPackage = fileURLToPath(new URL('../../../examples/sallow-reach', import.meta.url));

/** Brings the demo campaign of this installation into the record; its code. One that is held already stays as it is. */
export async function bringInDemo(effects: Effects): Promise<string> {
  const how = { path: demoPackage, who: effects.who, why: 'the demo campaign, invented' };
  return (await bringIn(how, effects)).campaign;
}
