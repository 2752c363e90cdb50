import { type ReactNode, type RefObject, useRef, useState } from 'react';
import type { Outcome } from '../lib/entry/outbox.ts';
import { text } from '../lib/text.ts';
import { FormKeys } from './form-keys.tsx';
import { toFirstFault } from './row-form.tsx';
import { useChoiceKeys } from './use-choice-keys.ts';

interface DrawnFormProps {
  readonly form: RefObject<HTMLFormElement | null>;
  /** What is chosen and typed: a refusal is shown until it changes. */
  readonly typed: object;
  /** True when nothing is missing and nothing is wrong. */
  readonly isSound: boolean;
  /** What does not fit together: asked about once, then kept as it stands. */
  readonly questions: readonly string[];
  /** Keys that choose; Enter keeps. */
  readonly keys: Readonly<Record<string, () => void>>;
  readonly keep: string;
  /** Words beside the key. */
  readonly keepKey?: string;
  readonly send: () => Promise<Outcome>;
  readonly onKept: () => void;
  readonly onCancel?: (() => void) | undefined;
  /** The parts of the form, which show their faults once it was meant to be kept. */
  readonly children: (isAsked: boolean) => ReactNode;
}

/** The form of what is read by eye and chosen on drawings. */
export function DrawnForm(props: DrawnFormProps) {
  const { form, typed, isSound, questions, keys, keep, keepKey, send, onKept, onCancel, children } = props;
  const words = text.entry.drawn;
  const [isAsked, setAsked] = useState(false);
  const [looked, setLooked] = useState('');
  const [refused, setRefused] = useState<{ readonly typed: object; readonly detail: string } | null>(null);
  const [isSending, setSending] = useState(false);
  const latest = useRef(typed);
  latest.current = typed;
  const question = questions.join();
  const isDoubtShown = question !== '' && looked === question;
  const submit = async () => {
    if (isSending) return;
    setAsked(true);
    if (!isSound) return void setTimeout(() => toFirstFault(form.current));
    if (question !== '' && !isDoubtShown) return setLooked(question);
    setSending(true);
    const outcome = await send();
    setSending(false);
    if (!outcome.kept) return setRefused({ typed: latest.current, detail: outcome.fault.detail });
    setAsked(false);
    setLooked('');
    onKept();
  };
  useChoiceKeys({ ...keys, enter: () => void submit() });
  return (
    <form
      ref={form}
      className="reading-form form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      {children(isAsked)}
      <div>
        {isDoubtShown ? (
          <div className="asked" role="alert">
            <p>
              <strong>{words.look}</strong>
            </p>
            {questions.map((one) => (
              <p key={one}>{one}</p>
            ))}
            <p className="soft">{words.lookCure}</p>
          </div>
        ) : null}
        {refused?.typed === typed ? (
          <p className="form-fault" role="alert">
            {refused.detail}
          </p>
        ) : null}
        <FormKeys
          keep={isDoubtShown ? words.keepAsIs : keep}
          isBusy={isSending}
          aside={keepKey === undefined ? null : <span className="soft keys-aside">{keepKey}</span>}
          onCancel={onCancel}
        />
      </div>
    </form>
  );
}
