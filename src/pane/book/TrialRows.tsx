/** What each row of the kit book does for one opening, with the numbers put in. */
import { mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { partWords } from "../../core/bookcheck/compareTrials";
import type { Trial, TriedLimit, TriedPart, Worked } from "../../core/bookcheck/trial";
import type { RowSource } from "../../core/kitbook/kitBook";
import type { LengthStyle } from "../../core/lengths/writeLength";
import { Disclosure } from "../parts/Disclosure";
import { LevelIcon } from "../parts/LevelIcon";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { useBookStyles } from "./book.styles";
import { MoreList } from "./MoreList";
import { RowPlace } from "./RowPlace";

export type TrialRowsProps = { readonly trial: Trial; readonly lengths: LengthStyle };

export function TrialRows({ trial, lengths }: TrialRowsProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const { sizes, parts, limits, broken, isCounted } = trial;
  const doing = (...deeds: readonly TriedPart["deed"][]) =>
    parts.filter(({ deed }) => deeds.includes(deed));
  const speaking = limits.filter(({ deed }) => deed !== "silent");
  const failing = doing("fails");
  return (
    <>
      <Notice level={isCounted ? "done" : "stop"} quiet>
        {isCounted
          ? "An opening of these sizes is counted."
          : "An opening of these sizes is not counted, or not in full."}
      </Notice>
      {broken.map(({ source, finding }) => (
        <div key={`${source.section} ${source.number}`} className={styles.fault}>
          <LevelIcon level="stop" />
          <span>
            {finding.message} <RowPlace source={source} />
          </span>
        </div>
      ))}
      <Group title="Limits that apply" rows={speaking} startsOpen>
        {(limit) => <LimitRow key={limit.source.number} limit={limit} />}
      </Group>
      <Group title="Parts that fail" rows={failing} startsOpen>
        {(part) => <PartRow key={part.source.number} part={part} lengths={lengths} />}
      </Group>
      <Group title="Parts that count" rows={doing("counts")} startsOpen>
        {(part) => <PartRow key={part.source.number} part={part} lengths={lengths} />}
      </Group>
      <Group title="Parts that are not needed" rows={doing("not needed", "none")}>
        {(part) => <PartRow key={part.source.number} part={part} lengths={lengths} />}
      </Group>
      <Group title="Sizes worked out" rows={sizes}>
        {(size) => (
          <Row key={size.source.number} source={size.source} title={size.name} answer={size.text}>
            <WorkedWords name="Worked out by" worked={size.worked} />
            {size.note === "" ? null : <div className={shared.small}>{size.note}</div>}
          </Row>
        )}
      </Group>
      <Group title="Limits that do not apply" rows={limits.filter(({ deed }) => deed === "silent")}>
        {(limit) => <LimitRow key={limit.source.number} limit={limit} />}
      </Group>
    </>
  );
}

type GroupProps<Item> = {
  readonly title: string;
  readonly rows: readonly Item[];
  readonly startsOpen?: boolean;
  readonly children: (item: Item) => ReactNode;
};

/** Nothing where there is no such row. */
function Group<Item>({ title, rows, startsOpen = false, children }: GroupProps<Item>) {
  const shared = useSharedStyles();
  if (rows.length === 0) return null;
  return (
    <Disclosure
      startsOpen={startsOpen}
      label={
        <span className={shared.strong}>
          {title} ({rows.length})
        </span>
      }
    >
      {() => <MoreList items={rows}>{children}</MoreList>}
    </Disclosure>
  );
}

type RowProps = {
  readonly source: RowSource;
  readonly title: string;
  readonly answer: string;
  readonly children: ReactNode;
};

function Row({ source, title, answer, children }: RowProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <li className={mergeClasses(shared.card, styles.row)}>
      <div className={styles.head}>
        <span className={mergeClasses(shared.strong, styles.name)}>{title}</span>
        <span className={mergeClasses(shared.strong, styles.end)}>{answer}</span>
      </div>
      {children}
      <div>
        <RowPlace source={source} />
      </div>
    </li>
  );
}

function PartRow({ part, lengths }: { readonly part: TriedPart; readonly lengths: LengthStyle }) {
  const shared = useSharedStyles();
  const { source, deed, bag, step, item, itemTyped, quantity, when } = part;
  const place = [bag, step === null ? "" : `step ${step}`].filter((words) => words !== "");
  return (
    <Row source={source} title={item ?? itemTyped} answer={partWords(part, lengths)}>
      {place.length === 0 ? null : <div className={shared.small}>{place.join(", ")}</div>}
      {when === null ? null : <WorkedWords name="Needed when" worked={when} />}
      {deed === "counts" || deed === "none" ? (
        <WorkedWords name="Quantity" worked={quantity} />
      ) : null}
    </Row>
  );
}

function LimitRow({ limit }: { readonly limit: TriedLimit }) {
  const styles = useBookStyles();
  const { source, deed, level, when, message } = limit;
  return (
    <Row source={source} title={level} answer={deed}>
      <div className={styles.fault}>
        {deed === "silent" ? null : <LevelIcon level={deed === "fails" ? "stop" : level} />}
        <span>{message}</span>
      </div>
      <WorkedWords name="When" worked={when} />
    </Row>
  );
}

function WorkedWords({ name, worked }: { readonly name: string; readonly worked: Worked }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <div>
      <span className={shared.small}>{name} </span>
      <span className={styles.code}>{worked.formula}</span>
      {worked.numbers === "" ? null : <span className={shared.small}> with {worked.numbers}</span>}
    </div>
  );
}
