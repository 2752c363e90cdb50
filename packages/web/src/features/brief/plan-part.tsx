import type { BriefFinding, Row, RowHeld } from '@provinghouse/contract';
import { useState } from 'react';
import { blindingColumn } from '../../components/campaign-columns.tsx';
import { Correction } from '../../components/correction.tsx';
import { TextField } from '../../components/form-field.tsx';
import { type AskedColumn, type OwnControl, RowForm } from '../../components/row-form.tsx';
import { dropDraft, type Typed } from '../../lib/entry/draft.ts';
import { correctCells } from '../../lib/entry/enter.ts';
import { text } from '../../lib/text.ts';
import { ReachTable } from './reach-table.tsx';

const words = text.brief.desk.plan;
const { label, hint } = text.campaign;

const planColumns: readonly AskedColumn[] = [
  { column: 'pieces_per_product', label: label.pieces_per_product, hint: hint.pieces_per_product },
  { column: 'order_seed', label: label.order_seed, hint: hint.order_seed, control: SeedControl },
];

interface PlanPartProps {
  readonly code: string;
  readonly held: RowHeld<'campaign'>;
  readonly brief: BriefFinding | null;
}

interface PlanPartState extends PlanPartProps {
  /** Pulls were made without a plan on record: one made now would be none. */
  readonly isLate: boolean;
}

/** The plan: asked for while it lacks something, then shown, and corrected or amended with a reason. */
export function PlanPart({ code, held, brief, isLate }: PlanPartState) {
  const { pieces_per_product, order_seed } = held.body;
  if (isLate && pieces_per_product === null) return <ReachTable brief={brief} planned={null} />;
  if (pieces_per_product === null || order_seed === null) return <PlanForm code={code} held={held} brief={brief} />;
  return <PlanFacts code={code} held={held} brief={brief} />;
}

function PlanForm({ code, held, brief }: PlanPartProps) {
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const draft = `plan ${code}`;
  const keep = async ({ pieces_per_product, order_seed, blinding }: Row<'campaign'>) => {
    setBusy(true);
    const cells = { pieces_per_product, order_seed, blinding };
    const change = { kind: 'campaign', cells, why: words.firstReason } as const;
    const outcome = await correctCells({ book: code, label: words.keeping }, held, change);
    setBusy(false);
    if (outcome.kept) dropDraft(draft);
    setFault(outcome.kept ? null : outcome.fault.detail);
  };
  const isFrozen = held.body.plan_frozen_at !== null;
  return (
    <>
      <p className="lead-in">{words.lead}</p>
      <RowForm
        kind="campaign"
        asked={isFrozen ? planColumns : [...planColumns, blindingColumn]}
        start={{ ...held.body, blinding: held.body.blinding ?? 'open' }}
        keep={words.keep}
        draft={draft}
        isBusy={isBusy}
        beside={(typed) => <ReachTable brief={brief} planned={piecesTyped(typed)} />}
        onKeep={(row) => void keep(row)}
      >
        {fault === null ? null : (
          <p className="form-fault" role="alert">
            {fault}
          </p>
        )}
      </RowForm>
    </>
  );
}

function piecesTyped(typed: Typed): number | null {
  const pieces = Number(typed.pieces_per_product ?? '');
  return Number.isInteger(pieces) && pieces > 0 ? pieces : null;
}

/** Drawn once by the browser's own source of chance, or typed. */
function SeedControl({ typed: _typed, onOther: _other, ...given }: OwnControl) {
  const isDrawn = given.value.trim() !== '';
  // Drawn again and again until an order pleases, it would be no lot.
  const draw = () => {
    if (!isDrawn) given.onChange(String(crypto.getRandomValues(new Uint32Array(1))[0] ?? 0));
  };
  return (
    <div className="seed-field">
      <TextField {...given} isNumber />
      <button type="button" className="press" aria-disabled={isDrawn || undefined} onClick={draw}>
        {words.draw}
      </button>
    </div>
  );
}

function PlanFacts({ code, held, brief }: PlanPartProps) {
  const [isOpen, setOpen] = useState(false);
  const { pieces_per_product, order_seed, blinding, plan_frozen_at } = held.body;
  const isFrozen = plan_frozen_at !== null;
  const facts = [
    [label.pieces_per_product, pieces_per_product],
    [label.order_seed, order_seed],
    [label.blinding, blinding === 'blind' ? words.blind : words.open],
  ] as const;
  return (
    <>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name} className="fact">
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {brief?.order ? null : <p className="soft lead-in">{words.orderLater}</p>}
      <p className="form-keys plan-keys">
        <button type="button" className="press" onClick={() => setOpen(true)}>
          {words.correct}
        </button>
      </p>
      <ReachTable brief={brief} planned={pieces_per_product} />
      {isOpen ? (
        <Correction
          book={code}
          kind="campaign"
          held={held}
          what={text.brief.desk.ofPlan}
          asked={isFrozen ? planColumns : [...planColumns, blindingColumn]}
          note={isFrozen ? <p className="soft">{text.brief.desk.amendment}</p> : null}
          onDone={() => setOpen(false)}
        />
      ) : null}
    </>
  );
}
