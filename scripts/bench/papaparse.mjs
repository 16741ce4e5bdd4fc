// The yardstick of the bench: papaparse over the whole text of a file, cells as text, nothing else.
import { readFileSync } from "node:fs";
import Papa from "papaparse";

console.log(Papa.parse(readFileSync(process.argv[2], "utf8")).data.length);
