import { Component, type ReactNode } from 'react';
import { Banner } from '../kit/banner.tsx';
import { Button } from '../kit/button.tsx';

interface MishapState {
  readonly error: Error | undefined;
}

/**
 * What stands in the window when a part of it could not be drawn: a mistake of the program. The build is safe (the engine
 * and the file are not touched by it), so drawing it anew is offered. React knows such a catcher only as a class.
 */
export class Mishap extends Component<{ readonly children: ReactNode; readonly place: string }, MishapState> {
  override readonly state: MishapState = { error: undefined };

  static getDerivedStateFromError(error: Error): MishapState {
    return { error };
  }

  override componentDidUpdate(before: { readonly place: string }): void {
    if (before.place !== this.props.place && this.state.error !== undefined) this.setState({ error: undefined });
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (error === undefined) return this.props.children;
    return (
      <Banner
        severity="stop"
        actions={<Button onClick={() => this.setState({ error: undefined })}>Draw It Again</Button>}
      >
        This page could not be drawn, by a mistake of the program ({error.message}). Nothing is lost: every edit that
        says “saved” is in the file.
      </Banner>
    );
  }
}
