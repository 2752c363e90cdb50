import { type Judgement, quantityNames } from '@provinghouse/core';
import { Link } from 'wouter';
import { LimitOrigin } from '../../components/limit-origin.tsx';
import { MeasuredOrigin } from '../../components/measured-origin.tsx';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { figureText, uncertaintyText } from '../../lib/figure.ts';
import { acceptanceText, limitText } from '../../lib/limit-text.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { type FoundColumn, type FoundRow, FoundTable } from './found-table.tsx';
import { Found } from './how-found.tsx';
import { RequirementVerdict } from './requirement-verdict.tsx';
import type { JudgedValue, RequirementGroup } from './view.ts';

interface RequirementRowsProps {
  readonly code: string;
  readonly title: string;
  readonly file: string;
  readonly groups: readonly RequirementGroup[];
  /** What heads each group; the rest of the page says the other. */
  readonly headedBy: 'product' | 'requirement';
}

const { head } = text.findings.rows;

const columns: readonly FoundColumn[] = [
  { heading: head.product, keys: ['product'], isFileOnly: true },
  { heading: head.requirement, keys: ['requirement'], isFileOnly: true },
  { heading: head.piece, keys: ['piece'] },
  { heading: head.value, keys: ['bound', 'value', 'expanded_uncertainty', 'unit'], isNumber: true },
  { heading: head.accept, keys: ['accepted_from', 'accepted_to'], isNumber: true },
  { heading: head.limit, keys: ['limit_from', 'limit_to', 'limit_source'], isFileOnly: true },
  { heading: head.verdict, keys: ['verdict', 'probability_of_conforming'] },
  { heading: head.reason, keys: ['reason'] },
];

/** Pieces against their requirements: value with uncertainty, what it must read, verdict and why. */
export function RequirementRows({ code, title, file, groups, headedBy }: RequirementRowsProps) {
  return (
    <FoundTable
      title={title}
      file={file}
      className="found-rows"
      columns={columns}
      groups={groups.map((group) => ({
        key: group.key,
        head: <GroupHead code={code} group={group} headedBy={headedBy} />,
        rows: group.values.map((value) => rowOf(code, value)),
      }))}
    />
  );
}

interface GroupHeadProps {
  readonly code: string;
  readonly group: RequirementGroup;
  readonly headedBy: 'product' | 'requirement';
}

function GroupHead({ code, group, headedBy }: GroupHeadProps) {
  const { product, limit, judgement, values } = group;
  return (
    <span className="found-group-head">
      <strong>{headedBy === 'product' ? product.product : quantityNames[limit.quantity]}</strong>
      <LimitOrigin limit={limit} />
      {judgement === undefined ? null : <RequirementVerdict code={code} judgement={judgement} isOneLine />}
      {values.length === 0 && product.pieces.length === 0 ? (
        <span className="soft">{text.findings.rows.noPieces}</span>
      ) : null}
    </span>
  );
}

function rowOf(code: string, { product, piece, judgement }: JudgedValue): FoundRow {
  const { limit, measured, verdict, reason, acceptance, probability } = judgement;
  const name = `${piece.piece}, ${quantityNames[limit.quantity]}`;
  return {
    key: piece.piece,
    cells: [
      { shown: product.product, values: [product.product] },
      { shown: null, values: [quantityNames[limit.quantity]] },
      { shown: <Link href={hrefs.piece(code, piece.piece)}>{piece.piece}</Link>, values: [piece.piece] },
      {
        shown:
          measured === null ? (
            <span className="soft">{text.notRecorded}</span>
          ) : (
            <MeasuredOrigin measured={measured} name={name} />
          ),
        values: [
          measured?.isAtLeast === true ? 'at least' : null,
          measured?.value ?? null,
          measured?.expandedUncertainty ?? null,
          limit.unit,
        ],
      },
      { shown: <Acceptance name={name} judgement={judgement} />, values: [acceptance.lower, acceptance.upper] },
      { shown: null, values: [limit.lower, limit.upper, `${limit.standard} (${limit.edition}), ${limit.place}`] },
      { shown: <ValueVerdict name={name} judgement={judgement} />, values: [verdict, probability] },
      {
        shown: verdict === 'conforms' ? null : <span className="soft small">{reason}</span>,
        values: [reason],
      },
    ],
  };
}

/** What a value must read to conform: the limit drawn in by the guard band. */
function Acceptance({ name, judgement }: { readonly name: string; readonly judgement: Judgement }) {
  const accepted = acceptanceText(judgement);
  const { how, rows } = text.findings;
  if (accepted === null) return <span className="soft">{text.none}</span>;
  const { limit, measured, rule } = judgement;
  const u = measured?.expandedUncertainty ?? null;
  return (
    <Found
      title={`${name}, ${rows.head.accept}`}
      how={{
        inputs: how.acceptFrom(limitText(limit), u === null ? text.notRecorded : uncertaintyText(u, limit.unit)),
        method: `${how.accept} ${text.rule[rule]}.`,
        sure: how.noneStated,
      }}
    >
      <span className="figure">{accepted}</span>
    </Found>
  );
}

/** A verdict on one value; opens to what was held against what, by which rule, and the chance of being right. */
function ValueVerdict({ name, judgement }: { readonly name: string; readonly judgement: Judgement }) {
  const { limit, measured, rule, verdict, reason, probability } = judgement;
  const { how } = text.findings;
  const value =
    measured === null ? text.notRecorded : figureText({ ...measured, uncertainty: measured.expandedUncertainty });
  return (
    <Found
      title={`${name}, ${text.findings.rows.head.verdict}`}
      how={{
        sentence: reason,
        inputs: how.verdictFrom(value, limitText(limit)),
        method: how.verdictBy(text.rule[rule]),
        sure: probability === null ? how.noChance : text.piece.chance(probability),
      }}
    >
      <VerdictMark verdict={verdict} />
    </Found>
  );
}
