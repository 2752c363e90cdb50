import type { CampaignFinding, FileEntry, Row, RowHeld } from '@provinghouse/contract';
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
    const told = await keepClaim({ code, standard: toSend(row, own, atBench), why }, row);
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
  readonly code: string;
  readonly standard: OwnStandard | null;
  readonly why: string;
}

/** An own specification goes into the campaign with the product that is judged by it. Gives the fault in words, or null. */
async function keepClaim({ code, standard, why }: Keeping, row: Row<'products'>): Promise<string | null> {
  const held = await hold(standard, row);
  if (typeof held === 'string') return held;
  const request = { rows: { products: [row] }, files: held, ...(why.trim() === '' ? {} : { why: why.trim() }) };
  const outcome = await enter({ book: code, label: words.entering(row.product) }, request);
  return outcome.kept ? null : outcome.fault.detail;
}

/** Where a claim is corrected, its specification goes ahead of the correction. */
async function keepStandard({ code, standard, why }: Keeping, row: Row<'products'>): Promise<string | null> {
  const held = await hold(standard, row);
  if (typeof held === 'string') return held;
  if (held.length === 0) return null;
  const outcome = await enter({ book: code, label: words.entering(row.product) }, { rows: {}, files: held, why });
  return outcome.kept ? null : outcome.fault.detail;
}

/** The file of a specification, its bytes sent ahead; none without one, and the fault in words where they could not be sent. */
async function hold(standard: OwnStandard | null, row: Row<'products'>): Promise<readonly FileEntry[] | string> {
  if (!standard) return [];
  const sent = await sendFile(new Blob([JSON.stringify(standard, null, 2)]));
  if (!sent.ok) return sent.fault.detail;
  return [{ path: `specifications/${row.specification}.json`, sha256: sent.record.sha256 }];
}

function ClaimCorrection({
  code,
  own,
  isFrozen,
  held,
  others,
  onDone,
}: ClaimFormProps & { readonly held: RowHeld<'products'> }) {
  const atBench = useOwnStandards();
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
      first={(row, why) => keepStandard({ code, standard: toSend(row, own, atBench), why }, row)}
      note={isFrozen ? <p className="soft">{text.brief.desk.amendment}</p> : null}
      onDone={onDone}
    />
  );
}
