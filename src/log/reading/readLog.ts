import { withRemembered } from "./answers.ts";
import { buildTable } from "./buildTable.ts";
import type { Dialect, ReadingOptions, ReadOutcome, RememberedReading } from "./contract.ts";
import { delimiterFromText } from "./delimiter.ts";
import { type Decoding, findEncoding } from "./encoding.ts";
import { headLinesOf, previewOf } from "./head.ts";
import { findLayout } from "./layout.ts";
import { MOST_BYTES, MOST_COLUMNS } from "./limits.ts";
import type { LogBytes } from "./logBytes.ts";
import { tableNotices } from "./notices.ts";
import { kindWithoutHeader, otherFileKind } from "./otherFile.ts";
import { notRead, question, refusal } from "./outcomes.ts";
import { layoutProblemNotice, noHeaderNotice, noRowsNotice } from "./questions.ts";
import { readTable } from "./readTable.ts";
import * as say from "./sentences.ts";
import { headerSignature } from "./signature.ts";

const DELIMITER_OPTIONS = ["--delimiter ,", "--delimiter ;", "--delimiter tab"];

/**
 * Reads one log: bytes -> encoding -> lines -> layout -> table of numbers -> clock and channels.
 * Never throws for any bytes: what cannot be read is a question or a refusal with the option that settles it.
 */
export function readLog(
  bytes: LogBytes,
  options: ReadingOptions,
  remembered: readonly RememberedReading[],
): ReadOutcome {
  if (bytes.length > MOST_BYTES) return refusal("too-many-bytes", say.tooManyBytes(bytes.length));
  const decoding = findEncoding(bytes);
  if (decoding === "empty") {
    return refusal("empty", bytes.length === 0 ? say.empty() : say.onlyErased(bytes.length));
  }
  if (decoding === "binary") return refusal("not-text", say.notText());
  const head = headLinesOf(bytes, decoding);
  if (head.overlongLine !== null) return refusal("line-too-long", say.lineTooLong(head.overlongLine));
  if (head.lines.every((line) => line.trim() === "")) return refusal("empty", say.onlyErased(bytes.length));
  const kind = otherFileKind(head.lines);
  if (kind !== null) return refusal("other-file", say.noLog(kind));
  return readText(bytes, decoding, head.lines, options, remembered);
}

function readText(
  bytes: LogBytes,
  decoding: Decoding,
  head: readonly string[],
  given: ReadingOptions,
  remembered: readonly RememberedReading[],
): ReadOutcome {
  const delimiter = given.delimiter === null ? "," : delimiterFromText(given.delimiter);
  if (delimiter.length !== 1) {
    return question("bad-delimiter", say.badDelimiter(given.delimiter!), DELIMITER_OPTIONS);
  }
  const first = findLayout(head, layoutAnswers(given));
  const signature = headerSignature(first.header, "units" in first ? first.units : null);
  const known = remembered.find((each) => each.headerSignature === signature);
  const options = withRemembered(given, known);
  const layout = known === undefined ? first : findLayout(head, layoutAnswers(options));
  const dialect: Dialect = {
    encoding: decoding.encoding,
    delimiter: layout.delimiter,
    decimalMark: layout.mark,
    headerLine: layout.headerLine,
  };
  const base = {
    dialect,
    headerSignature: signature,
    columns: [],
    dataLines: 0,
    preview: previewOf(head, layout.delimiter),
  };
  if ("problem" in layout || (layout.headerLine === 0 && options.columns.size === 0)) {
    const kind = kindWithoutHeader(head);
    if (kind !== null)
      return notRead(base, [{ code: "other-file", severity: "refusal", text: say.noLog(kind) }]);
  }
  if ("problem" in layout) return notRead(base, [layoutProblemNotice(layout, head)]);
  if (layout.header.length > MOST_COLUMNS) {
    return notRead(base, [
      { code: "too-many-columns", severity: "refusal", text: say.tooManyColumns(layout.header.length) },
    ]);
  }
  if (layout.headerLine === 0 && options.columns.size === 0) {
    return notRead(base, [noHeaderNotice(layout, head)]);
  }
  const built = buildTable(bytes, decoding, layout);
  if ("code" in built) return notRead(base, [built]);
  const { table } = built;
  if (table.rows === 0)
    return notRead(base, [
      noRowsNotice(layout.header.join(layout.delimiter), layout.headerLine),
      ...tableNotices(table, layout, decoding),
    ]);
  return readTable(table, {
    layout: built.layout,
    decoding,
    options,
    base: { ...base, dataLines: table.dataLines },
  });
}

function layoutAnswers(options: ReadingOptions) {
  const headers = [...options.columns.values()];
  return {
    delimiter: options.delimiter,
    decimalMark: options.decimalMark,
    isByNumber: headers.length > 0 && headers.every((header) => header.startsWith("#")),
  };
}
