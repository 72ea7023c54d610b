/** The list of a drop-down: a field to search in, arrow keys from entry to entry, Enter takes one. */
import type { IPopup } from "@univerjs/ui";
import { useId, useState, type ComponentType, type KeyboardEvent } from "react";
import "./gridList.css";

/** What the grid gives its list. */
type Offer = {
  readonly options: readonly { readonly label: string; readonly value: string }[];
  readonly defaultValue?: string;
  /** Whether the list has the keyboard; else somebody types into its cell. */
  readonly showSearch?: boolean;
  /** Whether a cell may hold several entries. */
  readonly multiple?: boolean;
  readonly onChange?: (values: string[]) => boolean | Promise<boolean>;
  readonly hideFn: () => void;
};

export type GridListProps = { readonly popup: IPopup<Offer> };

const takeFocus = (field: HTMLInputElement | null): void => field?.focus({ preventScroll: true });

const showEntry = (entry: HTMLElement | null): void => entry?.scrollIntoView({ block: "nearest" });

/**
 * The list as a component of the grid, which shows `ForSeveral` where several entries may be chosen.
 * `onClose` is called when a list is gone after it was used.
 */
export function gridList(
  ForSeveral: ComponentType<GridListProps>,
  onClose: () => void,
): ComponentType<GridListProps> {
  return function GridList({ popup }) {
    const offer = popup.extraProps;
    if (offer === undefined) return null;
    if (offer.multiple === true) return <ForSeveral popup={popup} />;
    return <OpenList offer={offer} onClose={onClose} />;
  };
}

type OpenListProps = { readonly offer: Offer; readonly onClose: () => void };

function OpenList({ offer, onClose }: OpenListProps) {
  const { options, defaultValue, showSearch = false, onChange, hideFn } = offer;
  const id = useId();
  const [search, setSearch] = useState("");
  const [at, setAt] = useState(() =>
    Math.max(
      0,
      options.findIndex(({ value }) => value.toLowerCase() === defaultValue?.toLowerCase()),
    ),
  );
  const shown = options.filter(({ label }) => label.toLowerCase().includes(search.toLowerCase()));
  const close = (): void => {
    hideFn();
    onClose();
  };
  const take = async (value: string | undefined): Promise<void> => {
    if (value !== undefined) await onChange?.([value]);
    close();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    // The grid would take the keys for the cell behind the list.
    event.stopPropagation();
    const next = { ArrowDown: at + 1, ArrowUp: at - 1 }[event.key];
    if (next !== undefined) setAt(Math.min(shown.length - 1, Math.max(0, next)));
    else if (event.key === "Enter") void take(shown[at]?.value);
    else if (event.key === "Escape" || event.key === "Tab") close();
    else return;
    event.preventDefault();
  };
  return (
    <div className="grid-list">
      {showSearch ? (
        <input
          ref={takeFocus}
          role="combobox"
          aria-label="Search the list"
          aria-expanded
          aria-controls={id}
          aria-activedescendant={shown.length === 0 ? undefined : `${id}-${at}`}
          value={search}
          onChange={({ target }) => {
            setSearch(target.value);
            setAt(0);
          }}
          onKeyDown={onKeyDown}
        />
      ) : null}
      <ul id={id} role="listbox" aria-label="What may be typed here">
        {shown.map(({ label, value }, index) => (
          // The keyboard is the field's: the entries themselves never have it.
          // eslint-disable-next-line jsx-a11y/click-events-have-key-events
          <li
            key={value}
            id={`${id}-${index}`}
            ref={index === at ? showEntry : null}
            role="option"
            aria-selected={showSearch && index === at}
            onClick={() => void take(value)}
          >
            {label}
          </li>
        ))}
      </ul>
    </div>
  );
}
