import { isInputError, parseOwnStandard } from '@provinghouse/core';
import { useId, useState } from 'react';
import { Link } from 'wouter';
import { dropOwnStandard, holdOwnStandard, useOwnStandards } from '../../lib/own-standards.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';

interface FileFault {
  readonly name: string;
  readonly faults: readonly string[];
}

const words = text.rulebook;

/** The own specifications at hand, and the way to bring in another from its file. */
export function OwnFiles() {
  const own = useOwnStandards();
  const id = useId();
  const [fault, setFault] = useState<FileFault | null>(null);
  const bring = async (file: File | undefined) => {
    if (file !== undefined) setFault(await taken(file));
  };
  return (
    <>
      {own.length === 0 ? (
        <p className="rulebook-how">{words.ownNone}</p>
      ) : (
        <ul className="own-list">
          {own.map((standard) => (
            <li key={standard.id}>
              <Link href={hrefs.rulebook(`words=${encodeURIComponent(standard.id)}`)}>{standard.id}</Link>
              <span className="soft">
                {standard.title}, {standard.edition}
              </span>
              <button
                type="button"
                className="press"
                aria-label={words.dropLabel(standard.id)}
                onClick={() => dropOwnStandard(standard.id)}
              >
                {words.drop}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className="own-bring">
        <label htmlFor={id}>{words.bringFile}</label>{' '}
        <input
          id={id}
          type="file"
          accept="application/json,.json"
          onChange={({ target }) => {
            void bring(target.files?.[0]);
            target.value = '';
          }}
        />
      </p>
      {fault === null ? null : (
        <div role="alert">
          <p className="form-fault">{words.fileFault(fault.name)}</p>
          <ul className="sentences">
            {fault.faults.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

/** Takes a file in; what is the matter with it where it cannot be taken. */
async function taken(file: File): Promise<FileFault | null> {
  try {
    const standard = parseOwnStandard(JSON.parse(await file.text()), file.name);
    holdOwnStandard(standard);
    return null;
  } catch (error) {
    if (isInputError(error)) {
      const listed = error.context.faults;
      return { name: file.name, faults: Array.isArray(listed) ? listed.map(String) : [error.message] };
    }
    return { name: file.name, faults: [words.notJson] };
  }
}
