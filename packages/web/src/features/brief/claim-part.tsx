import type { CampaignFinding, Row, RowHeld } from '@provinghouse/contract';
import { type OwnStandard, standardId } from '@provinghouse/core';
import { useState } from 'react';
import { Correction, Withdrawal } from '../../components/correction.tsx';
import { TextField } from '../../components/form-field.tsx';
import { RowForm } from '../../components/row-form.tsx';
import { dropDraft } from '../../lib/entry/draft.ts';
import { enter, sendFile } from '../../lib/entry/enter.ts';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { text } from '../../lib/text.ts';
import { claimColumns, claimFault } from './claim-columns.tsx';
import { ClaimLimits } from './claim-limits.tsx';
import { ClaimTable } from './claim-table.tsx';

const words = text.brief.desk.claims;

interface ClaimPartProps {
  readonly code: string;
  readonly campaign: Row<'campaign'>;
  readonly isBlind: boolean;
  readonly products: readonly RowHeld<'products'>[];
  /** Own specifications of the campaign, then of the bench. */
  readonly own: readonly OwnStandard[];
  readonly finding: CampaignFinding | null;
}

type Open =
  | { readonly what: 'new' }
  | { readonly what: 'correct' | 'withdraw'; readonly held: RowHeld<'products'> }
  | null;

/** The products of a campaign with their claims: entered, corrected and taken out. */
export function ClaimPart({ code, campaign, isBlind, products, own, finding }: ClaimPartProps) {
  const [open, setOpen] = useState<Open>(products.length === 0 && !isBlind ? { what: 'new' } : null);
  const isFrozen = campaign.plan_frozen_at !== null;
  const close = () => setOpen(null);
  return (
    <>
      {products.length === 0 ? <p className="lead-in">{words.none}</p> : null}
      {products.length === 0 ? null : (
        <ClaimTable
          products={products}
          own={own}
          finding={finding}
          isBlind={isBlind}
          {...(isBlind
            ? {}
            : {
                onCorrect: (held: RowHeld<'products'>) => setOpen({ what: 'correct', held }),
                onWithdraw: (held: RowHeld<'products'>) => setOpen({ what: 'withdraw', held }),
              })}
        />
      )}
      {isBlind ? <p className="soft lead-in">{words.blind}</p> : null}
      {open === null && !isBlind ? (
        <p className="form-keys">
          <button type="button" className="press" onClick={() => setOpen({ what: 'new' })}>
            {words.add}
          </button>
        </p>
      ) : null}
      {open?.what === 'new' ? (
        <NewClaim {...{ code, own, isFrozen }} others={products} onDone={close} isFirst={products.length === 0} />
      ) : null}
      {open?.what === 'correct' ? (
        <ClaimCorrection {...{ code, own, isFrozen }} held={open.held} others={products} onDone={close} />
      ) : null}
      {open?.what === 'withdraw' ? (
        <Withdrawal book={code} kind="products" held={open.held} what={words.ofProduct(open.held.id)} onDone={close} />
      ) : null}
    </>
  );
}

interface ClaimFormProps {
  readonly code: string;
  readonly own: readonly OwnStandard[];
  readonly isFrozen: boolean;
  readonly others: readonly RowHeld<'products'>[];
  readonly onDone: () => void;
}

function NewClaim({ code, own, isFrozen, others, onDone, isFirst }: ClaimFormProps & { readonly isFirst: boolean }) {
  const atBench = useOwnStandards();
  const [why, setWhy] = useState('');
  const [isAsked, setAsked] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const draft = `claim ${code}`;
  const keep = async (row: Row<'products'>) => {
    setAsked(true);
    if (isFrozen && why.trim() === '') return;
    setBusy(true);
    setFault(null);
    const told = await keepClaim(code, row, { standard: toSend(row, own, atBench), why });
    setBusy(false);
    if (told !== null) return setFault(told);
    dropDraft(draft);
    onDone();
  };
  return (
    <section className="claim-new" aria-label={words.title}>
      <h3>{words.title}</h3>
      <RowForm
        kind="products"
        asked={claimColumns(own, true)}
        start={lastClaim(others)}
        keep={words.keep}
        draft={draft}
        isBusy={isBusy}
        check={(row) => claimFault(row, { own, others })}
        beside={(typed) => <ClaimLimits typed={typed} own={own} />}
        onKeep={(row) => void keep(row)}
        {...(isFirst ? {} : { onCancel: onDone })}
      >
        {isFrozen ? (
          <TextField
            label={words.amending}
            value={why}
            fault={isAsked && why.trim() === '' ? text.entry.fault.typed('is empty, but every row needs it') : null}
            onChange={setWhy}
          />
        ) : null}
        {fault === null ? null : (
          <p className="form-fault" role="alert">
            {fault}
          </p>
        )}
      </RowForm>
    </section>
  );
}

/** Products that are compared are mostly of one size and one rule: the next form begins with those of the last. */
function lastClaim(others: readonly RowHeld<'products'>[]): Partial<Row<'products'>> {
  const last = others.at(-1)?.body;
  if (!last) return {};
  const { nominal_size_mm, specification, grade, currency } = last;
  return { nominal_size_mm, specification, grade, currency };
}

/** The specification of the bench that goes into the campaign with a product: none where the campaign has its own of that name. */
function toSend(row: Row<'products'>, own: readonly OwnStandard[], atBench: readonly OwnStandard[]) {
  const standard = own.find(({ id }) => standardId(id) === standardId(row.specification));
  return atBench.find((one) => one === standard) ?? null;
}

interface Keeping {
  readonly standard: OwnStandard | null;
  readonly why: string;
}

/** An own specification goes into the campaign with the product that is judged by it. Gives the fault in words, or null. */
async function keepClaim(code: string, row: Row<'products'>, { standard, why }: Keeping): Promise<string | null> {
  const files: { path: string; sha256: string }[] = [];
  if (standard) {
    const sent = await sendFile(new Blob([JSON.stringify(standard, null, 2)]));
    if (!sent.ok) return sent.fault.detail;
    files.push({ path: `specifications/${row.specification}.json`, sha256: sent.record.sha256 });
  }
  const request = { rows: { products: [row] }, files, ...(why.trim() === '' ? {} : { why: why.trim() }) };
  const outcome = await enter({ book: code, label: words.entering(row.product) }, request);
  return outcome.kept ? null : outcome.fault.detail;
}

function ClaimCorrection({
  code,
  own,
  isFrozen,
  held,
  others,
  onDone,
}: ClaimFormProps & { readonly held: RowHeld<'products'> }) {
  const rest = others.filter(({ id }) => id !== held.id);
  return (
    <Correction
      book={code}
      kind="products"
      held={held}
      what={words.ofProduct(held.id)}
      asked={claimColumns(own, false)}
      beside={(typed) => <ClaimLimits typed={typed} own={own} />}
      check={(row) => claimFault(row, { own, others: rest, before: held.body })}
      note={isFrozen ? <p className="soft">{text.brief.desk.amendment}</p> : null}
      onDone={onDone}
    />
  );
}
