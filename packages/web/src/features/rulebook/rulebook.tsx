import './rulebook.css';
import type { OwnStandard } from '@provinghouse/core';
import { Link } from 'wouter';
import { Notice } from '../../components/notice.tsx';
import { keepOwnStandard } from '../../lib/own-standards.ts';
import { hrefs } from '../../lib/route.ts';
import { text } from '../../lib/text.ts';
import { ComparisonPage } from './comparison-page.tsx';
import { OwnPage } from './own-page.tsx';
import { SearchPage } from './search-page.tsx';
import { SpecificationPage } from './specification-page.tsx';

/** Keeps an own specification in the record; the reason in words where it could not be. */
export type KeepOwn = (standard: OwnStandard) => Promise<{ readonly fault: string | null }>;

/** The pages of the Rulebook by the end of their address. */
export default function Rulebook({ page }: { readonly page: string | null }) {
  switch (page) {
    case null:
      return <SearchPage />;
    case 'specification':
      return <SpecificationPage />;
    case 'compare':
      return <ComparisonPage />;
    case 'own':
      return <OwnPage onKeep={keepOwnStandard} />;
    default:
      return (
        <Notice title={text.fault.nowhere}>
          <p>
            <Link href={hrefs.rulebook()}>{text.rulebook.toSearch}</Link>
          </p>
        </Notice>
      );
  }
}
