import type { Calculation, CalculationOutput, Verdict } from '@provinghouse/core';
import { VerdictMark } from '../../components/verdict-mark.tsx';
import { text } from '../../lib/text.ts';
import { isSentence, printed, resultText, unitText } from './result-text.ts';
import { SendMenu } from './send-menu.tsx';
import type { StepReckoning } from './sheet-reckoning.ts';
import type { SheetActions } from './use-sheet.ts';

interface ResultTableProps {
  readonly step: StepReckoning;
  readonly calculation: Calculation;
  readonly actions: SheetActions;
}

const words = text.reckoner;

/** What a calculation gives; before it can be reckoned, what it will give. */
export function ResultTable({ step, calculation, actions }: ResultTableProps) {
  const outputs = step.reckoning?.outputs ?? null;
  const sentence = outputs?.sentence;
  return (
    <>
      <table className="leaf reckoned-results">
        <caption className="for-ears">{`${calculation.title}: ${words.results}`}</caption>
        <thead>
          <tr>
            <th scope="col">{words.head.result}</th>
            <th scope="col" className="num">
              {words.head.value}
            </th>
            <th scope="col">{words.head.send}</th>
          </tr>
        </thead>
        <tbody>
          {calculation.outputs
            .filter((output) => !isSentence(output))
            .map((output) => (
              <ResultRow
                key={output.key}
                output={output}
                value={outputs === null ? undefined : (outputs[output.key] ?? null)}
                step={step}
                actions={actions}
              />
            ))}
        </tbody>
      </table>
      <p role="status" className="reckoned-sentence">
        {typeof sentence === 'string' ? sentence : ''}
      </p>
    </>
  );
}

function isVerdict(value: number | string | null): value is Verdict {
  return typeof value === 'string' && Object.hasOwn(text.verdict, value);
}

interface ResultRowProps {
  readonly output: CalculationOutput;
  /** Undefined before it is reckoned. */
  readonly value: number | string | null | undefined;
  readonly step: StepReckoning;
  readonly actions: SheetActions;
}

function ResultRow({ output, value, step, actions }: ResultRowProps) {
  const canSend = typeof value === 'number' && Number.isFinite(value);
  return (
    <tr>
      <th scope="row">{printed(output.meaning)}</th>
      <td className="num">
        <output className="reckoned-value" name={output.key}>
          {value === undefined ? (
            <span className="soft">{text.none}</span>
          ) : (
            <>
              {isVerdict(value) ? <VerdictMark verdict={value} /> : resultText(value)}
              {value === null || typeof value === 'string' || unitText(output.unit) === '' ? null : (
                <span className="unit">{`\u00a0${unitText(output.unit)}`}</span>
              )}
            </>
          )}
        </output>
      </td>
      <td>
        {canSend ? (
          <SendMenu
            what={output.meaning}
            calculation={step.name}
            result={output.key}
            unit={output.unit}
            onSend={(to) => actions.send({ step: step.number, key: output.key }, to)}
          />
        ) : null}
      </td>
    </tr>
  );
}
