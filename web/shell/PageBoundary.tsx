import { Component, type ReactNode } from 'react';
import { Button } from '../parts/Button.tsx';
import { ErrorNotice } from '../parts/Notice.tsx';

/** Keeps the shell standing when a page breaks, and says what happened. */
export class PageBoundary extends Component<{ children: ReactNode }, { error: unknown }> {
  override state = { error: null };

  static getDerivedStateFromError(error: unknown) {
    return { error };
  }

  override render() {
    if (this.state.error === null) return this.props.children;
    return (
      <div className="stack">
        <h1>This page could not be shown</h1>
        <ErrorNotice error={this.state.error} title="Nothing you saved is lost" />
        <div>
          <Button onPress={() => location.reload()}>Load the page again</Button>
        </div>
      </div>
    );
  }
}
