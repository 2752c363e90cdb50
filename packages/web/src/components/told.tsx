import type { ReactNode } from 'react';
import { text } from '../lib/text.ts';
import { Opens } from './opens.tsx';

/** A statistic as the record tells it: a plain sentence, the method with its source, and what to doubt. */
export interface ToldStatistic {
  readonly sentence: string;
  readonly method?: string;
  readonly doubts?: readonly string[];
}

interface ToldProps {
  readonly children: ReactNode;
  readonly title: string;
  readonly told: ToldStatistic;
}

/** A figure that opens to how it was computed. */
export function Told({ children, title, told }: ToldProps) {
  return (
    <Opens title={title} content={<HowComputed told={told} />}>
      {children}
    </Opens>
  );
}

function HowComputed({ told }: { readonly told: ToldStatistic }) {
  return (
    <>
      <p>{told.sentence}</p>
      {told.method === undefined ? null : (
        <p className="small soft">
          {text.origin.method}: {told.method}
        </p>
      )}
      {(told.doubts ?? []).map((doubt) => (
        <p key={doubt} className="small">
          {doubt}
        </p>
      ))}
    </>
  );
}
