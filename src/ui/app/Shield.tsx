import { Component, type ReactNode } from 'react';
import { SCREEN } from '../../words/screen';

/** Holds a part of the page: if it cannot be drawn or fetched, one sentence and one way forward stand in its place, and the rest goes on. */
export class Shield extends Component<{ readonly children: ReactNode }, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <div className="shield" role="alert">
        <p>{SCREEN.failed}</p>
        <button type="button" className="key" onClick={() => window.location.reload()}>
          {SCREEN.reload}
        </button>
      </div>
    );
  }
}
