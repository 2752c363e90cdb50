import { Link } from 'wouter';

interface TeachingProps {
  readonly words: string;
  readonly to: string;
  readonly label: string;
}

/** In place of an empty table: what will stand there, and where to go for it. */
export function Teaching({ words, to, label }: TeachingProps) {
  return (
    <div className="findings-teaching">
      <p>{words}</p>
      <p>
        <Link className="press" href={to}>
          {label}
        </Link>
      </p>
    </div>
  );
}

/** What a part says while nothing in the campaign can fill it. */
export function NotYet({ words }: { readonly words: string }) {
  return <p className="soft">{words}</p>;
}
