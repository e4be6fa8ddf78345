import { Component, type ReactNode } from 'react';

type ContainedProps = {
  /** What stands there instead; `again` shows it once more. */
  readonly fallback: (again: () => void) => ReactNode;
  /** What it is shown of: with another one it is tried again. */
  readonly of?: unknown;
  readonly children: ReactNode;
};

/** Keeps a failure of what is inside it inside: everything around it goes on. React offers this to classes alone. */
export class Contained extends Component<ContainedProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override componentDidUpdate(before: ContainedProps) {
    if (this.state.failed && before.of !== this.props.of) this.setState({ failed: false });
  }

  override render() {
    const { children, fallback } = this.props;
    return this.state.failed ? fallback(() => this.setState({ failed: false })) : children;
  }
}
