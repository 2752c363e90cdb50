import { figureText } from '../../lib/figure.ts';
import { text } from '../../lib/text.ts';
import type { PreviewState } from './use-preview.ts';
import type { Upload } from './use-upload.ts';

interface IncomingStateProps {
  readonly file: File;
  readonly isOpen: boolean;
  readonly upload: Upload;
  readonly seen: PreviewState;
  readonly onOpen: () => void;
  readonly onAway: () => void;
}

/** The head of a file: what it is called, how far it is, what it says in one line, and what is wrong with it. */
export function IncomingState({ file, isOpen, upload, seen, onOpen, onAway }: IncomingStateProps) {
  const words = text.pulls;
  const fault = seen.preview?.fault ?? null;
  return (
    <div className="pulls-file-head">
      <h3>
        {file.name} <span className="soft small">{words.sending.size(file.size)}</span>
      </h3>
      <div className="pulls-file-state">
        <Progress file={file} upload={upload} seen={seen} />
        {fault === null ? null : (
          <div role="alert" className="pulls-file-fault">
            <p className="form-fault">{words.faultTitle}</p>
            <p>
              {fault.words} {words.faultCure[fault.code] ?? ''}
            </p>
          </div>
        )}
      </div>
      <p className="form-keys pulls-file-keys">
        {seen.preview === null || fault !== null ? null : (
          <button type="button" className="press" aria-expanded={isOpen} onClick={onOpen}>
            {isOpen ? words.bring.fold : words.bring.look}
            <span className="for-ears">{`: ${file.name}`}</span>
          </button>
        )}
        <button type="button" className="press" title={words.bring.awayHint} onClick={onAway}>
          {words.bring.away}
          <span className="for-ears">{`: ${file.name}`}</span>
        </button>
      </p>
    </div>
  );
}

function Progress({ file, upload, seen }: Pick<IncomingStateProps, 'file' | 'upload' | 'seen'>) {
  const words = text.pulls.sending;
  if (upload.state === 'sending') {
    const share = `${Math.floor(100 * upload.share)} %`;
    return (
      <p className="pulls-progress">
        <progress value={upload.share} max={1} aria-label={words.on(file.name, share)} />
        <span role="status">{words.on(file.name, share)}</span>
      </p>
    );
  }
  if (upload.state === 'cut off')
    return (
      <p className="form-fault" role="alert">
        {words.cutOff}{' '}
        <button type="button" className="press press-small" onClick={upload.again}>
          {words.again}
        </button>
      </p>
    );
  if (upload.state === 'refused')
    return (
      <p className="form-fault" role="alert">
        {upload.fault.detail}
      </p>
    );
  if (seen.preview === null)
    return seen.fault === null ? (
      <p className="soft" role="status">
        {words.reading}
      </p>
    ) : (
      <p className="form-fault" role="alert">
        {seen.fault.detail}
      </p>
    );
  return <Summary seen={seen} />;
}

function Summary({ seen }: { readonly seen: PreviewState }) {
  const { preview } = seen;
  if (preview === null || preview.fault !== null) return null;
  if (preview.questions.length > 0) return <p className="pulls-open">{text.pulls.columns.settle}</p>;
  const { maximum } = preview;
  if (maximum === null) return null;
  return (
    <p className="soft">
      {text.pulls.preview.maximum} {figureText({ ...maximum, uncertainty: maximum.expandedUncertainty })}
    </p>
  );
}
