import Papa from "papaparse";

/**
 * Cells of records whose quotes are known to close, one array per record, untrimmed.
 * The only door to papaparse: no header, no types, dialect fixed.
 */
export function cellsOfRecords(records: readonly string[], delimiter: string): string[][] {
  const parsed = Papa.parse<string[]>(records.join("\n"), {
    header: false,
    delimiter,
    newline: "\n",
    quoteChar: '"',
    dynamicTyping: false,
    skipEmptyLines: false,
  });
  if (parsed.data.length === records.length) return parsed.data;
  return records.map((record) => record.split(delimiter));
}
