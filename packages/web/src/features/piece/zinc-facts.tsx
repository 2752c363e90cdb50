import { adherenceWords, type ZincSurvey } from '@provinghouse/core';
import { Figure } from '../../components/figure.tsx';
import { FigureOrigin } from '../../components/figure-origin.tsx';
import { text } from '../../lib/text.ts';

/** What was read of the zinc. */
export function ZincFacts({ zinc }: { readonly zinc: ZincSurvey | null }) {
  if (zinc === null) return <p className="soft">{text.piece.noZinc}</p>;
  const adherence = zinc.worstAdherence;
  return (
    <dl className="facts">
      <div className="fact">
        <dt>{text.piece.zincMean}</dt>
        <dd>
          <FigureOrigin
            name={text.piece.zincMean}
            value={zinc.mean_um}
            unit="um"
            uncertainty={zinc.standardUncertainty_um}
          >
            <p>{text.method.zincMean}</p>
          </FigureOrigin>
        </dd>
      </div>
      <div className="fact">
        <dt>{text.piece.zincLeast}</dt>
        <dd>
          <FigureOrigin name={text.piece.zincLeast} value={zinc.leastLinkMean_um} unit="um">
            <p>{text.method.zincLeast}</p>
          </FigureOrigin>
        </dd>
      </div>
      <div className="fact">
        <dt>{text.piece.zincReadings}</dt>
        <dd>{zinc.readings}</dd>
      </div>
      <div className="fact">
        <dt>{text.piece.adherence}</dt>
        <dd>{adherence === null ? text.notRecorded : `${adherence}: ${adherenceWords[adherence] ?? ''}`}</dd>
      </div>
      <div className="fact">
        <dt>{text.piece.flaked}</dt>
        <dd>
          <Figure value={zinc.greatestFlakedShare_pct} unit="%" />
        </dd>
      </div>
    </dl>
  );
}
