/** Shows a fault of this program instead of a blank pane. */
import { Button } from "@fluentui/react-components";
import { Component, type ReactNode } from "react";
import { Notice } from "./parts/Notice";

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
      <Button size="small" onClick={() => this.setState({ broken: null })}>
        Begin again
      </Button>
    );
    return (
      <Notice level="stop" actions={again}>
        Cribsheet has a fault and stopped. Your workbook is as it was. The fault says:{" "}
        {broken instanceof Error ? broken.message : "no more than that."}
      </Notice>
    );
  }
}
