/** When a page breaks: says so, shows the line to copy, offers to load again. The rest of the tool stays. */
import { Component, type ReactNode } from "react";
import { Answer } from "../parts/Answer.tsx";
import { words } from "../words.ts";

interface Props {
  readonly children: ReactNode;
  /** A new key forgets the error: another page is another chance. */
  readonly page: string;
}
interface State {
  readonly error: Error | null;
  readonly page: string;
}

export class Broken extends Component<Props, State> {
  override state: State = { error: null, page: this.props.page };

  static getDerivedStateFromError(error: Error): Partial<State> {
    return { error };
  }

  static getDerivedStateFromProps(props: Props, state: State): State | null {
    return props.page === state.page ? null : { error: null, page: props.page };
  }

  override render() {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <main id="page" className="plain" role="alert">
        <Answer text={words.shell.broke} under={words.shell.brokeDetail} />
        <pre className="code-line">{`${error.name}: ${error.message}`}</pre>
        <button type="button" className="press" onClick={() => location.reload()}>
          {words.shell.again}
        </button>
      </main>
    );
  }
}
