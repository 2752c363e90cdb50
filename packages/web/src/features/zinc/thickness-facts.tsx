import type { Row } from '@provinghouse/contract';
import { type ThicknessRule, thicknessRules } from '@provinghouse/core';
import { Figure } from '../../components/figure.tsx';
import { FigureOrigin } from '../../components/figure-origin.tsx';
import { Opens } from '../../components/opens.tsx';
import { text } from '../../lib/text.ts';
import { surveyOf } from './zinc-rows.ts';

const words = text.zinc.thickness;

/** Mean and least link mean so far, beside what the rulebook recommends. */
export function ThicknessFacts({ readings }: { readonly readings: readonly Row<'zinc'>[] }) {
  const survey = surveyOf(readings);
  return (
    <dl className="facts survey-facts">
      <div className="fact">
        <dt>{words.mean}</dt>
        <dd>
          <FigureOrigin
            name={words.mean}
            value={survey?.mean_um ?? null}
            unit="um"
            uncertainty={doubled(survey?.standardUncertainty_um)}
          >
            <p>{words.meanHow(survey?.readings ?? 0)}</p>
          </FigureOrigin>
        </dd>
      </div>
      <div className="fact">
        <dt>{words.least}</dt>
        <dd>
          <FigureOrigin name={words.least} value={survey?.leastLinkMean_um ?? null} unit="um">
            <p>{words.leastHow}</p>
          </FigureOrigin>
        </dd>
      </div>
      {thicknessRules().map((rule) => (
        <div className="fact" key={rule.topic}>
          <dt>{words.rules}</dt>
          <dd>
            <RuleWords rule={rule} least_um={survey?.leastLinkMean_um ?? null} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function doubled(u: number | null | undefined): number | null {
  return u === null || u === undefined ? null : 2 * u;
}

function RuleWords({ rule, least_um }: { readonly rule: ThicknessRule; readonly least_um: number | null }) {
  const standing = least_um === null ? words.noLeast : least_um >= rule.leastMean_um ? words.met : words.notMet;
  return (
    <>
      <Opens
        title={words.rules}
        content={
          <>
            <p>{rule.statement}</p>
            <p>{words.ruleHow}</p>
            <ul>
              {rule.sources.map((source) => (
                <li key={source.url ?? source.citation}>
                  {source.about ?? source.citation}
                  {source.url === undefined ? null : <span className="line soft">{source.url}</span>}
                </li>
              ))}
            </ul>
            {rule.crossChecked ? null : <p className="soft">{words.unchecked}</p>}
          </>
        }
      >
        {words.rule(rule.leastMean_um, rule.topic)}
      </Opens>
      <span className="line soft">
        {standing}
        {least_um === null ? null : (
          <>
            {' '}
            (<Figure value={Math.round(10 * least_um) / 10} unit="um" />)
          </>
        )}
      </span>
    </>
  );
}
