import { Component, type ReactNode } from 'react';
import { text } from '../lib/text.ts';
import { Notice } from './notice.tsx';

interface LoadGuardProps {
  readonly children: ReactNode;
}

/**
 * In place of a screen that could not be loaded or drawn: says so, and loads the page anew. The server may have been stopped, or
 * started again with newer screens. React offers this to classes only.
 */
export class LoadGuard extends Component<LoadGuardProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <Notice title={text.fault.broken}>
        <p>{text.fault.brokenCure}</p>
        <p className="notice-press">
          <button type="button" className="press" onClick={() => window.location.reload()}>
            {text.fault.reload}
          </button>
        </p>
      </Notice>
    );
  }
}
