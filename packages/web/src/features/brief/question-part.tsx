import type { BriefFinding, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { methodColumns, questionColumns, ruleColumns } from '../../components/campaign-columns.tsx';
import { Correction } from '../../components/correction.tsx';
import type { AskedColumn } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';

const { desk, ruleHead } = text.brief;
const { label, rules } = text.campaign;

interface PartProps {
  readonly code: string;
  readonly held: RowHeld<'campaign'>;
}

/** The question, who asked it and who tests. */
export function QuestionPart({ code, held }: PartProps) {
  const { title, question, client, laboratory, opened_on } = held.body;
  const facts = [
    [label.question, question],
    [label.client, client],
    [label.title, title],
    [label.laboratory, laboratory],
    [label.opened_on, opened_on],
  ] as const;
  return (
    <>
      <FactList facts={facts} />
      <CorrectKey code={code} held={held} asked={questionColumns} name={desk.correctQuestion} what={desk.ofQuestion} />
    </>
  );
}

interface RulePartProps extends PartProps {
  readonly brief: BriefFinding | null;
}

/** The decision rule in words, the method and the sampling. */
export function RulePart({ code, held, brief }: RulePartProps) {
  const { decision_rule, coverage_factor, method, sampling, ...speed } = held.body;
  const { table_speed_min_mm_per_min: least, table_speed_max_mm_per_min: greatest } = speed;
  const name = decision_rule === 'simple acceptance' ? rules.simple.label : rules.guarded.label;
  const facts = [
    [ruleHead.rule, brief?.ruleSentence ?? name],
    [label.coverage_factor, coverage_factor],
    [ruleHead.method, method],
    [ruleHead.speed, least === null && greatest === null ? null : ruleHead.window(least, greatest)],
    [ruleHead.sampling, sampling],
  ] as const;
  return (
    <>
      <FactList facts={facts} />
      <CorrectKey
        code={code}
        held={held}
        asked={[...ruleColumns, ...methodColumns]}
        name={desk.correctRule}
        what={desk.ofRule}
      />
    </>
  );
}

type Facts = readonly (readonly [name: string, value: string | number | null])[];

function FactList({ facts }: { readonly facts: Facts }) {
  return (
    <dl className="facts brief-decision">
      {facts.map(([name, value]) => (
        <div key={name} className="fact">
          <dt>{name}</dt>
          <dd>{value ?? <span className="soft">{text.notRecorded}</span>}</dd>
        </div>
      ))}
    </dl>
  );
}

interface CorrectKeyProps extends PartProps {
  readonly asked: readonly AskedColumn[];
  readonly name: string;
  readonly what: string;
}

function CorrectKey({ code, held, asked, name, what }: CorrectKeyProps) {
  const [isOpen, setOpen] = useState(false);
  const isFrozen = held.body.plan_frozen_at !== null;
  return (
    <>
      <p className="form-keys">
        <button type="button" className="press" onClick={() => setOpen(true)}>
          {name}
        </button>
      </p>
      {isOpen ? (
        <Correction
          book={code}
          kind="campaign"
          held={held}
          what={what}
          asked={asked}
          note={isFrozen ? <p className="soft">{desk.amendment}</p> : null}
          onDone={() => setOpen(false)}
        />
      ) : null}
    </>
  );
}
