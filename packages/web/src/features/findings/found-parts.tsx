import type { CampaignFinding, ProductFinding } from '@provinghouse/contract';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { BreakTallies } from './break-tallies.tsx';
import { ComparisonSize, productsOf } from './comparison-section.tsx';
import { Fold } from './fold.tsx';
import { LongChains } from './long-chain.tsx';
import type { Progress } from './progress.ts';
import { Readers } from './readers.tsx';
import { Sentences } from './sentences.tsx';
import { sizeText } from './size-text.ts';
import { NotYet, Teaching } from './teaching.tsx';
import { ValueTable } from './value-table.tsx';
import { ZincTables } from './zinc-tables.tsx';

interface FoundPartsProps {
  readonly finding: CampaignFinding;
  readonly products: readonly ProductFinding[];
  readonly progress: Progress;
}

/** What is found beyond the requirements: products compared, long chains, value, breaks, zinc, readers, and what to doubt of it. */
export function FoundParts(given: FoundPartsProps) {
  const { finding, products, progress } = given;
  const code = finding.campaign.campaign;
  const words = text.findings;
  const { teaching } = words;
  const own = { code, products, pieces: finding.pieces };
  return (
    <>
      <ForceParts {...given} />
      <Fold id="breaks" label={words.breaks} note={words.breaksHow}>
        {progress.hasBreaks ? (
          <BreakTallies {...own} />
        ) : progress.hasPulls ? (
          <Teaching words={teaching.breaks} label={teaching.toBreaks} to={hrefs.breaks(code)} />
        ) : (
          <NotYet words={teaching.noPull} />
        )}
      </Fold>
      <Fold id="zinc" label={words.zinc} note={words.zincHow}>
        {progress.hasZinc ? (
          <ZincTables {...own} />
        ) : (
          <Teaching words={teaching.zinc} label={teaching.toZinc} to={hrefs.zinc(code)} />
        )}
      </Fold>
      <Fold id="readers" label={words.readers.label} note={words.readers.how}>
        <Readers code={code} agreement={finding.agreement} />
      </Fold>
      <Fold id="doubts" label={words.doubts}>
        {finding.doubts.length === 0 ? (
          <p className="soft">{words.noDoubts}</p>
        ) : (
          <Sentences sentences={finding.doubts} />
        )}
      </Fold>
      <Fold id="limits" label={words.limits}>
        <Sentences sentences={finding.limitsOfTheFinding} />
      </Fold>
    </>
  );
}

/** The parts that rest on breaking forces. */
function ForceParts({ finding, products, progress }: FoundPartsProps) {
  const words = text.findings;
  const { teaching } = words;
  const comparisons = finding.comparisons.filter((one) =>
    productsOf(one, finding).some((product) => products.includes(product)),
  );
  return (
    <>
      <Fold
        id="comparisons"
        label={words.comparisons}
        note={words.comparisonsHow}
        gist={comparisons.map((one) => sizeText([one])).join(', ')}
      >
        {progress.hasForces ? (
          comparisons.map((one) => <ComparisonSize key={one.nominalSize_mm} finding={finding} comparison={one} />)
        ) : (
          <NotYet words={teaching.noForce} />
        )}
      </Fold>
      <Fold id="long-chain" label={words.longChain} note={words.longChainHow}>
        {progress.hasForces ? (
          <LongChains finding={finding} products={products} />
        ) : (
          <NotYet words={teaching.noForce} />
        )}
      </Fold>
      <Fold id="value" label={words.value} note={words.valueHow}>
        {progress.hasValue ? (
          comparisons.map((one) => (
            <ValueTable key={one.nominalSize_mm} finding={finding} comparison={one} shown={products} />
          ))
        ) : (
          <NotYet words={teaching.noPrice} />
        )}
      </Fold>
    </>
  );
}
