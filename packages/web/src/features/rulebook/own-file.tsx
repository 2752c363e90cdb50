import { type DraftFault, type OwnStandard, quantityNames } from '@provinghouse/core';
import { useState } from 'react';
import { Link } from 'wouter';
import { holdOwnStandard, useOwnStandards } from '../../lib/own-standards.ts';
import { hrefs } from '../../lib/route.ts';
import { save } from '../../lib/save-figure.ts';
import { text } from '../../lib/text.ts';
import type { KeepOwn } from './rulebook.tsx';

interface OwnFileProps {
  /** Null while something is missing. */
  readonly standard: OwnStandard | null;
  readonly faults: readonly DraftFault[];
  readonly unread: ReadonlySet<string>;
  readonly onKeep?: KeepOwn;
}

const words = text.rulebook;

/** What is still missing, or the finished specification with what can be done with it. */
export function OwnFile({ standard, faults, unread, onKeep }: OwnFileProps) {
  if (standard === null) {
    const told = toldFaults(faults, unread);
    return (
      <div role="status">
        <p>{words.ownFaults(told.length)}</p>
        <ul className="sentences">
          {told.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </div>
    );
  }
  return <Finished standard={standard} {...(onKeep === undefined ? {} : { onKeep })} />;
}

/** Each fault with its place; of a field that holds no number only that is told. */
function toldFaults(faults: readonly DraftFault[], unread: ReadonlySet<string>): readonly string[] {
  const unreadAt = new Set([...unread].map((name) => name.split('.')[0] ?? name));
  const names: Readonly<Record<string, string>> = {
    ...quantityNames,
    name: words.ownName,
    title: words.ownFor,
    edition: words.ownEdition,
    grade: words.ownGrade,
    whole: words.ownLimits,
  };
  return [
    ...[...unreadAt].map((at) => words.faultAt(names[at] ?? at, words.notANumber)),
    ...faults
      .filter(({ at }) => !unreadAt.has(at))
      .map((fault) => words.faultAt(names[fault.at] ?? fault.at, fault.words)),
  ];
}

interface FinishedProps {
  readonly standard: OwnStandard;
  readonly onKeep?: KeepOwn;
}

function Finished({ standard, onKeep }: FinishedProps) {
  const own = useOwnStandards();
  const json = `${JSON.stringify(standard, null, 2)}\n`;
  const isHeld = own.some((one) => JSON.stringify(one) === JSON.stringify(standard));
  const limits = new Set(standard.tables.flatMap(({ columns }) => Object.values(columns).map(quantityGroup))).size - 1;
  return (
    <>
      <p role="status">{words.ownSound(limits)}</p>
      <p className="rulebook-presses">
        {onKeep === undefined ? null : <Keep standard={standard} onKeep={onKeep} />}
        <button
          type="button"
          className="press"
          onClick={() => save(new Blob([json], { type: 'application/json' }), `${fileName(standard)}.json`)}
        >
          {words.download}
        </button>
        <button type="button" className="press" disabled={isHeld} onClick={() => holdOwnStandard(standard)}>
          {words.hold}
        </button>
      </p>
      <p className="soft">{words.downloadHow}</p>
      {isHeld ? (
        <p role="status">
          {words.held} <Link href={hrefs.rulebook(`words=${encodeURIComponent(standard.id)}`)}>{words.toSearch}</Link>
        </p>
      ) : null}
      <details className="own-json">
        <summary>{words.showFile}</summary>
        <pre>{json}</pre>
      </details>
    </>
  );
}

/** A pitch and its deviations are one limit, the size is none. */
function quantityGroup({ quantity }: { readonly quantity: string }): string {
  return quantity.replace(/(Upper|Lower|Max|Min)$/, '');
}

function fileName({ id }: OwnStandard): string {
  return id.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
}

function Keep({ standard, onKeep }: Required<FinishedProps>) {
  const [said, setSaid] = useState('');
  const [isBusy, setBusy] = useState(false);
  const keep = async () => {
    setBusy(true);
    setSaid(words.keeping);
    const { fault } = await onKeep(standard);
    setSaid(fault === null ? words.kept : words.notKept(fault));
    setBusy(false);
  };
  return (
    <>
      <button type="button" className="press" disabled={isBusy} onClick={() => void keep()}>
        {words.keep}
      </button>
      <span className="soft" role="status">
        {said}
      </span>
    </>
  );
}
