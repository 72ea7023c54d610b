/** What is wrong with a book's bolts, as findings about its rows. */
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import type { Fastener } from "../fasteners/readFastener";
import type { BookConnection, BookConnections } from "./connections";
import { rowName } from "./rowName";

export const connectionFindings = {
  "nut-not-full": {
    level: "warn",
    says: "{row}: {bolt} is too short for its nut. What it joins ({joined}), washers and nut take up to {needed} of its {length}.",
    todo: "Use one that is at least {better} long, or correct the thickness joined.",
  },
  "too-short": {
    level: "warn",
    says: "{row}: {bolt} may stand only {threads} threads beyond its nut (joined {joined}, washers and nut at their thickest); common practice asks for two.",
    todo: "Use one that is {better} long, or correct the thickness joined.",
  },
  "too-long": {
    level: "warn",
    says: "{row}: {bolt} stands {beyond} beyond its nut, more than {most}, and may foul what moves past it.",
    todo: "Use a shorter one, or see that it is clear there.",
  },
  "out-of-thread": {
    level: "warn",
    says: "{row}: the nut on {bolt} runs out of thread. {shank} of the bolt next to its head has none (ASME B18.2.1), and only {under} lies under the nut.",
    todo: "Use a shorter one, or one that is threaded all along.",
  },
  "neck-too-deep": {
    level: "warn",
    says: "{row}: the square neck of {bolt} is at least {depth} deep (ASME B18.5) and only {joined} is joined, so the neck comes through and keeps the nut from clamping.",
    todo: "Use a bolt with a short neck, a washer over it, or correct the thickness joined.",
  },
  "size-differs": {
    level: "warn",
    says: "{row}: {other} does not belong on {bolt}.",
    todo: "Make bolt, washers and nut of one size.",
  },
  "threads-differ": {
    level: "warn",
    says: "{row}: {other} has other threads than {bolt}.",
    todo: "Make them the same.",
  },
  "counts-differ": {
    level: "warn",
    says: "{row}: {other} is not counted once, or so many times, for each {bolt}.",
    todo: "Make its quantity the bolt's, or so many times it.",
  },
  "no-nut": {
    level: "note",
    says: "{row}: {bolt} has no nut.",
    todo: "That is right for a tapped hole; else add the nut in the next row, with the same bag, step and condition.",
  },
  "several-nuts": {
    level: "note",
    says: "{row}: {bolt} has {nuts} nuts.",
    todo: "That is right where one locks the other.",
  },
  "dimensions-not-known": {
    level: "note",
    says: "{row}: the dimensions of {other} are not known here, so this connection is not checked.",
    todo: "Check it by hand.",
  },
  "length-not-known": {
    level: "note",
    says: "{row}: neither description nor code of {bolt} says how long it is, so it is not checked.",
    todo: "Write the length behind its size: 1/4-20 x 1-1/4 in.",
  },
  "joined-not-known": {
    level: "note",
    says: "{row}: the book does not say what thickness {bolt} joins, so its length is not checked.",
    todo: "Type the inches in the column Joined.",
  },
  "joined-nowhere": {
    level: "note",
    says: "No bolt of the book says what thickness it joins, so no length is checked.",
    todo: "Type the inches in the column Joined beside the bolts.",
  },
  "joined-unusable": {
    level: "warn",
    says: "{row}: the thickness that {bolt} joins cannot be worked out, or is below zero.",
    todo: "Correct the column Joined: it is in inches.",
  },
  "loose-fastener": {
    level: "note",
    says: "{row}: {found} stands with no bolt, so it is not checked.",
    todo: "That is right where the bolt is part of another item.",
  },
} as const satisfies FindingTable;

type Code = keyof typeof connectionFindings;

/** Findings of the book, by row; the bolts without a thickness are one finding where none has one. */
export function findingsOfConnections({ connections, loose }: BookConnections): readonly Finding[] {
  const isJoinedNowhere =
    connections.length > 0 && connections.every(({ joined }) => joined === null);
  const ofBolts = connections.flatMap((connection) => findingsOf(connection, isJoinedNowhere));
  return [
    ...(isJoinedNowhere ? [makeFinding(connectionFindings, "joined-nowhere", {})] : []),
    ...ofBolts,
    ...loose.map(({ source, item }) =>
      makeFinding(connectionFindings, "loose-fastener", {
        place: source.place,
        found: item,
        values: { row: rowName(source) },
      }),
    ),
  ];
}

function findingsOf(connection: BookConnection, isJoinedNowhere: boolean): readonly Finding[] {
  const { source, items, bolt, joined, faults } = connection;
  const [code = ""] = items;
  const tell = (finding: Code, values: Readonly<Record<string, string | number>> = {}): Finding =>
    makeFinding(connectionFindings, finding, {
      place: source.place,
      found: items.join(" + "),
      values: {
        row: rowName(source),
        bolt: code,
        length: inchText(bolt.length ?? 0),
        joined: joined === null ? "not known" : inchText(joined.most),
        ...values,
      },
    });
  return faults.flatMap((fault): readonly Finding[] => {
    switch (fault.code) {
      case "nut-not-full":
        return [
          tell(fault.code, { needed: inchText(fault.fit.needed), better: inchText(fault.length) }),
        ];
      case "too-short":
        return [
          tell(fault.code, {
            threads: fault.fit.threadsBeyond.toFixed(1),
            better: inchText(fault.length),
          }),
        ];
      case "too-long":
        return [
          tell(fault.code, { beyond: inchText(fault.fit.beyond), most: inchText(fault.most) }),
        ];
      case "out-of-thread":
        return [
          tell(fault.code, {
            shank: inchText(fault.fit.plainShank),
            under: inchText(fault.fit.underNut),
          }),
        ];
      case "neck-too-deep":
        return [tell(fault.code, { depth: inchText(fault.depth), joined: inchText(fault.joined) })];
      case "size-differs":
      case "threads-differ":
      case "counts-differ":
        return [tell(fault.code, { other: fastenerText(fault.other) })];
      case "not-known":
        return [tell("dimensions-not-known", { other: fastenerText(fault.other) })];
      case "several-nuts":
        return [tell(fault.code, { nuts: fault.nuts })];
      case "joined-not-known":
        return isJoinedNowhere ? [] : [tell(fault.code)];
      case "no-nut":
      case "length-not-known":
      case "joined-unusable":
        return [tell(fault.code)];
    }
  });
}

/** `a hex nut 1/4`. */
const fastenerText = ({ kind, nominal }: Fastener): string => `a ${kind} ${nominal}`;

/** Inches to a thousandth, as fasteners are measured: `0.226 in`. */
export const inchText = (length: number): string => `${Number(length.toFixed(3))} in`;

/** `0.5 in`, `0.25 in to 0.5 in`, or that it is not known. */
export const joinedWords = (joined: BookConnection["joined"]): string => {
  if (joined === null) return "thickness not known";
  const { least, most } = joined;
  return least === most ? inchText(most) : `${inchText(least)} to ${inchText(most)}`;
};
