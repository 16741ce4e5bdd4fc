// The other yardstick, where the package is at hand (BENCH_PACKAGES names a folder that has it): the same log read
// and summed by DuckDB on two threads. Not a dependency. Exit code 9: not at hand.
import { createRequire } from "node:module";
import { join } from "node:path";

const [file] = process.argv.slice(2);
const from = join(process.env.BENCH_PACKAGES ?? import.meta.dirname, "any.js");
const api = await Promise.resolve()
  .then(() => createRequire(from)("@duckdb/node-api"))
  .catch(() => process.exit(9));
if (file === undefined) process.exit(0);

const connection = await (await api.DuckDBInstance.create(":memory:", { threads: "2" })).connect();
const names = Array.from({ length: 12 }, (_, at) => `c${at}`);
const types = names.map((name) => `'${name}': 'DOUBLE'`).join(", ");
const ofColumns = names.map(
  (name) => `min(${name}), max(${name}), avg(${name}), quantile_cont(${name}, 0.95)`,
);
await connection.run(
  `CREATE TABLE log AS SELECT * FROM read_csv('${file}', header = false, skip = 1, columns = {${types}})`,
);
const whole = await connection.runAndReadAll(
  `SELECT ${ofColumns.join(", ")}, regr_slope(c1, c2), regr_intercept(c1, c2) FROM log`,
);
const sums = await connection.runAndReadAll(
  `SELECT sum((c2 + b2) / 2 * (c0 - b0)), sum((c1 * c2 + b1 * b2) / 2 * (c0 - b0)),
     sum(CASE WHEN c2 > 80 THEN c0 - b0 ELSE 0 END)
   FROM (SELECT c0, c1, c2, lag(c0) OVER w AS b0, lag(c1) OVER w AS b1, lag(c2) OVER w AS b2
     FROM log WINDOW w AS (ORDER BY c0))`,
);
console.log(whole.getRows().length + sums.getRows().length);
