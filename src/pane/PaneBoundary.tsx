/** Shows a fault of this program instead of a blank pane. */
import { Component, type ReactNode } from "react";
import { Notice } from "./parts/Notice";
import { SmallButton } from "./parts/SmallButton";

type State = { readonly broken: unknown };

/** A class, since React catches faults of what it renders in no other way. */
export class PaneBoundary extends Component<{ readonly children: ReactNode }, State> {
  override state: State = { broken: null };

  static getDerivedStateFromError(broken: unknown): State {
    return { broken };
  }

  override render(): ReactNode {
    const { broken } = this.state;
    if (broken === null) return this.props.children;
    const again = (
      <SmallButton onClick={() => this.setState({ broken: null })}>Begin again</SmallButton>
    );
    return (
      <Notice level="stop" actions={again}>
        Cribsheet has a fault and stopped. Your workbook is as it was. The fault says:{" "}
        {broken instanceof Error ? broken.message : "no more than that."}
      </Notice>
    );
  }
}
