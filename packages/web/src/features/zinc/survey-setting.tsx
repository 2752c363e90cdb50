import { useState } from 'react';
import { ChoiceField, TextField } from '../../components/form-field.tsx';
import { text } from '../../lib/text.ts';
import type { Gauge } from './use-gauge.ts';

interface SurveySettingProps {
  readonly gauge: Gauge;
  readonly perLink: string;
  readonly perLinkFault: string | null;
  readonly setPerLink: (typed: string) => void;
  readonly links: string;
  readonly linksFault: string | null;
  readonly setLinks: (typed: string) => void;
}

/** What stays the same from reading to reading: the gauge, which links, and how many readings on each. */
export function SurveySetting(props: SurveySettingProps) {
  const { gauge, perLink, perLinkFault, setPerLink, links, linksFault, setLinks } = props;
  const words = text.zinc.thickness;
  // What has to be seen to is shown; the rest stays folded until it is asked for.
  const [isOpenAtFirst] = useState(
    gauge.chosen === null || gauge.isOpen || perLinkFault !== null || linksFault !== null,
  );
  return (
    <details className="survey-setting form" open={isOpenAtFirst}>
      <summary>{words.setting(gauge.chosen, perLink, links)}</summary>
      <div className="form-fields">
        <ChoiceField
          label={words.gauge}
          {...(gauge.choices.length === 0 ? { hint: words.noGauges } : {})}
          value={gauge.chosen ?? ''}
          empty={words.noGauge}
          choices={gauge.choices.map((value) => ({ value, label: value }))}
          onChange={gauge.choose}
        />
        <TextField
          label={words.perLink}
          hint={words.perLinkHint}
          isNumber
          fault={perLinkFault}
          value={perLink}
          onChange={setPerLink}
        />
        <TextField label={words.links} hint={words.linksHint} fault={linksFault} value={links} onChange={setLinks} />
      </div>
      {gauge.isOpen && gauge.chosen !== null ? (
        <div className="asked">
          <p>{words.override(gauge.chosen, gauge.lastDue)}</p>
          <TextField
            label={words.overrideLabel}
            hint={words.overrideHint}
            value={gauge.override}
            onChange={gauge.setOverride}
          />
        </div>
      ) : null}
    </details>
  );
}
