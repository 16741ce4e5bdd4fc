import { group } from "d3";
import { SEED } from "./drawnMutants.mjs";

/** Survivors of one run as text: the score, how many of each kind, then each with its place and what it became. */
export function survivorText(name, report) {
  const all = Object.entries(report.files).flatMap(([path, { mutants, source }]) =>
    mutants.map((mutant) => ({ ...mutant, path, was: textAt(source, mutant.location) })),
  );
  const counted = (...states) => all.filter((each) => states.includes(each.status)).length;
  const killed = counted("Killed", "Timeout");
  const alive = all
    .filter((each) => each.status === "Survived" || each.status === "NoCoverage")
    .sort(
      (one, other) =>
        one.path.localeCompare(other.path) || one.location.start.line - other.location.start.line,
    );
  const run = killed + alive.length;
  const kinds = [...group(alive, (each) => each.mutatorName)].sort(
    (one, other) => other[1].length - one[1].length,
  );
  return `${[
    `${name}: ${((100 * killed) / run).toFixed(1)} % of ${run} mutants killed${drawn(killed, run, counted("CompileError"))}.`,
    `${alive.length} survived, of which ${counted("NoCoverage")} no test reaches; ${counted("Timeout")} of the killed never ended.`,
    "",
    ...kinds.map(([kind, list]) => `${String(list.length).padStart(4)} ${kind}`),
    "",
    ...alive.map(
      (each) =>
        `${each.path}:${each.location.start.line} ${each.mutatorName}: ${short(each.was)} -> ${short(each.replacement ?? "")}`,
    ),
  ].join("\n")}\n`;
}

/** The score of a sample is that of all mutants within an interval: Wilson, JASA 22 (1927), 209-212, at 95 %. */
function drawn(killed, run, left) {
  if (left === 0) return "";
  const z = 1.96;
  const centre = (killed + z ** 2 / 2) / (run + z ** 2);
  const half = (z / (run + z ** 2)) * Math.sqrt((killed * (run - killed)) / run + z ** 2 / 4);
  const [low, high] = [centre - half, centre + half].map((share) => (100 * share).toFixed(1));
  return `, drawn with seed ${SEED} from ${run + left}; of all of them ${low} to ${high} % (95 % interval)`;
}

function textAt(source, { start, end }) {
  const lines = source.split("\n").slice(start.line - 1, end.line);
  if (lines.length === 1) return lines[0].slice(start.column - 1, end.column - 1);
  return [lines[0].slice(start.column - 1), ...lines.slice(1)].join(" ");
}

function short(text) {
  const line = text.replace(/\s+/g, " ").trim();
  return line.length > 70 ? `${line.slice(0, 67)}...` : line;
}
