import type { BreakModeFinding, LongChainFinding } from '@provinghouse/core';
import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import { type FoundCell, FoundTable } from './found-table.tsx';
import { Found, FoundFigure } from './how-found.tsx';

const { how, modesHead: head } = text.findings;

interface ModeTableProps {
  readonly code: string;
  readonly name: string;
  readonly found: LongChainFinding;
}

/** The law of each break mode of a product, seen or only bounded. */
export function ModeTable({ code, name, found }: ModeTableProps) {
  return (
    <FoundTable
      title={text.findings.modes(name)}
      note={text.findings.modesHow}
      file={`${code}-${name}-break-modes`}
      className="summary"
      columns={[
        { heading: head.mode, keys: ['mode'] },
        { heading: head.breaks, keys: ['breaks'], isNumber: true },
        { heading: head.shape, keys: ['shape'], isNumber: true },
        { heading: head.interval, keys: ['shape_from', 'shape_to'], isNumber: true },
        { heading: head.scale, keys: ['scale_kN'], isNumber: true },
        { heading: head.likelihood, keys: ['likelihood_shape', 'likelihood_shape_standard_error'], isNumber: true },
      ]}
      groups={[
        {
          key: name,
          rows: [...found.modes, ...found.unseen].map((mode) => ({
            key: mode.mode,
            cells: cellsOf(name, mode, found),
          })),
        },
      ]}
    />
  );
}

function cellsOf(name: string, mode: BreakModeFinding, found: LongChainFinding): FoundCell[] {
  const { breaks, shapeMedian, shapeInterval90, law, likelihood, reason } = mode;
  const title = (heading: string) => `${name}, ${mode.mode}, ${heading}`;
  const count = Number(breaks.toFixed(2));
  const inputs = how.modeFrom(String(count));
  const { low, high } = shapeInterval90;
  const interval =
    high === null
      ? text.limit.atLeast(low.toPrecision(2))
      : text.limit.between(low.toPrecision(2), high.toPrecision(2));
  const told = {
    sentence: mode.priorSentence,
    inputs,
    method: `${found.method}.`,
    sure: `${how.intervalIs(interval, '90\u00a0%')} ${how.spreadKept(`${Math.round(100 * mode.shapeSpreadKept)}\u00a0%`)}`,
    doubts: found.doubts,
  };
  return [
    { shown: mode.mode, values: [mode.mode] },
    {
      shown: (
        <Found title={title(head.breaks)} how={{ inputs, method: how.tally, sure: how.tallySure }}>
          {count}
        </Found>
      ),
      values: [breaks],
    },
    {
      shown: (
        <Found title={title(head.shape)} how={told}>
          <span className="figure">{shapeMedian.toPrecision(2)}</span>
        </Found>
      ),
      values: [shapeMedian],
    },
    {
      shown: (
        <Found title={title(head.interval)} how={{ ...told, sure: how.isInterval }}>
          <span className="figure">{interval}</span>
        </Found>
      ),
      values: [shapeInterval90.low, shapeInterval90.high],
    },
    {
      shown: (
        <FoundFigure
          title={title(head.scale)}
          value={law.scale_kN}
          unit="kN"
          how={{ ...told, method: `${how.scale} ${told.method}` }}
        />
      ),
      values: [law.scale_kN],
    },
    {
      shown:
        likelihood === null ? (
          <span className="soft small">{reason ?? text.none}</span>
        ) : (
          <Found
            title={title(head.likelihood)}
            how={{
              inputs,
              method: `${likelihood.method}.`,
              sure: how.likelihood(
                likelihood.shapeStandardError.toPrecision(2),
                figureText({ value: likelihood.scale_kN, unit: 'kN', uncertainty: likelihood.scaleStandardError_kN }),
              ),
            }}
          >
            <span className="figure">{likelihood.shape.toPrecision(2)}</span>
          </Found>
        ),
      values: [likelihood?.shape ?? null, likelihood?.shapeStandardError ?? null],
    },
  ];
}
