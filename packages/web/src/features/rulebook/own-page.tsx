import { ownCopy, ownStandardFrom, type Specification } from '@provinghouse/core';
import { useMemo } from 'react';
import { TextBlank } from '../../components/blank.tsx';
import { Page, Section } from '../../components/page.tsx';
import { SpecificationChoice } from '../../components/specification-choice.tsx';
import { useOwnStandards } from '../../lib/own-standards.ts';
import { keyText } from '../../lib/specification-key.ts';
import { text } from '../../lib/text.ts';
import { useAddressState } from '../../lib/use-address-state.ts';
import { lookUp } from './look-up.ts';
import { draftOf, emptyForm, gradeOf, type OwnForm, ownAddress } from './own-address.ts';
import { OwnFile } from './own-file.tsx';
import { OwnLimits } from './own-limits.tsx';
import type { KeepOwn } from './rulebook.tsx';

const words = text.rulebook;

/** An own specification made from an existing one. */
export function OwnPage({ onKeep }: { readonly onKeep?: KeepOwn }) {
  const own = useOwnStandards();
  const [form, setForm] = useAddressState(ownAddress);
  const found = lookUp(form.from, own);
  return (
    <Page
      title={words.ownTitle}
      lead={found.specification === null ? words.ownChoose : words.ownLead(found.specification.title)}
    >
      <Section label={words.ownStart} note={words.ownStartHow}>
        <div className="blanks">
          <SpecificationChoice
            chosen={found.key}
            onChoose={(key) => setForm({ ...emptyForm, from: key === null ? null : keyText(key) }, 'push')}
          />
        </div>
        {form.from !== null && found.fault !== null ? <p className="form-fault">{found.fault}</p> : null}
      </Section>
      {found.specification === null ? null : (
        <OwnParts
          form={form}
          base={found.specification}
          onForm={setForm}
          {...(onKeep === undefined ? {} : { onKeep })}
        />
      )}
    </Page>
  );
}

interface OwnPartsProps {
  readonly form: OwnForm;
  readonly base: Specification;
  readonly onForm: (form: OwnForm) => void;
  readonly onKeep?: KeepOwn;
}

function OwnParts({ form, base, onForm, onKeep }: OwnPartsProps) {
  const { draft, unread } = useMemo(() => draftOf(form, base), [form, base]);
  const { standard, faults } = useMemo(() => ownStandardFrom(base, draft), [base, draft]);
  const lost = useMemo(() => ownCopy(base).lost, [base]);
  const faultAt = (at: string) => faults.find((fault) => fault.at === at)?.words ?? null;
  return (
    <>
      <Section label={words.ownNames}>
        <div className="blanks">
          <TextBlank
            label={words.ownName}
            name="name"
            value={form.name}
            hint={words.ownNameHint}
            fault={form.name === '' ? null : faultAt('name')}
            onText={(name) => onForm({ ...form, name })}
          />
          <TextBlank
            label={words.ownFor}
            name="title"
            value={form.title}
            onText={(title) => onForm({ ...form, title })}
          />
          <TextBlank
            label={words.ownEdition}
            name="edition"
            value={form.edition}
            hint={words.ownEditionHint}
            onText={(edition) => onForm({ ...form, edition })}
          />
          <TextBlank
            label={words.ownGrade}
            name="grade"
            value={gradeOf(form, base)}
            hint={words.ownGradeHint}
            fault={faultAt('grade')}
            onText={(grade) => onForm({ ...form, grade })}
          />
        </div>
      </Section>
      <Section label={words.ownLimits} note={words.ownLimitsHow}>
        <OwnLimits form={form} base={base} draft={draft} unread={unread} faults={faults} onForm={onForm} />
      </Section>
      {lost.length === 0 ? null : (
        <Section label={words.lost} note={words.lostHow}>
          <ul className="sentences">
            {lost.map((statement) => (
              <li key={statement}>{statement}</li>
            ))}
          </ul>
        </Section>
      )}
      <Section label={words.ownDone}>
        <OwnFile
          standard={unread.size === 0 ? standard : null}
          faults={faults}
          unread={unread}
          {...(onKeep === undefined ? {} : { onKeep })}
        />
      </Section>
    </>
  );
}
