import type { Source } from '../chain/rulebook.ts';
import { rulebook } from '../chain/rulebook.ts';
import file from '../chain/tables/chain-standards.json' with { type: 'json' };

/** What the rulebook says of the thickness of zinc on chain. */
export interface ThicknessRule {
  /** Chain it was written for. */
  readonly topic: string;
  readonly statement: string;
  readonly leastMean_um: number;
  readonly sources: readonly Source[];
  readonly crossChecked: boolean;
}

/**
 * The rules of the rulebook that ask for a thickness of zinc, in its order. They are recommendations beside the chain standards, which
 * limit no thickness themselves; a campaign says whether they apply.
 */
export function thicknessRules(): readonly ThicknessRule[] {
  return file.general.service.flatMap(({ topic, rule, value, unit, sources, crossChecked }) =>
    unit === 'um' && typeof value === 'number'
      ? [
          {
            topic,
            statement: rule,
            leastMean_um: value,
            sources: sources.flatMap((id) => rulebook.sources[id] ?? []),
            crossChecked,
          },
        ]
      : [],
  );
}
