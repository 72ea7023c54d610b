/** Where costs and weights come from. */
import { Button, makeStyles } from "@fluentui/react-components";
import type { Inputs } from "../../app/reading/inputs";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { counted } from "../parts/quantities";
import { useAdding } from "./useAdding";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  where: {
    display: "flex",
    alignItems: "center",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalXS,
  },
});

export function ItemsPart({ inputs }: { readonly inputs: Inputs }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { isBusy, add } = useAdding();
  const place = inputs.items[0]?.code.place ?? null;
  return (
    <>
      {inputs.hasOwnItems ? (
        <div className={styles.where}>
          Priced by the workbook’s own {counted(inputs.items.length, "item")}
          {place === null ? null : <PlaceButton place={place} of={place.sheet} />}
        </div>
      ) : (
        <>
          <div>
            Priced by the starter’s items, whose costs and weights are invented. Add them as a sheet
            and type your suppliers’ own over them.
          </div>
          <Button disabled={isBusy} onClick={() => add(new Set(["items"]), [])}>
            Add an items sheet
          </Button>
        </>
      )}
      <div className={shared.small}>
        Spares are set item by item on the items sheet: a percentage, and at least so many pieces.
      </div>
    </>
  );
}
