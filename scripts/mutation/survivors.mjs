/** Survivors of one run as text: the score, how many of each kind, then each with its place and what it became. */
export function survivorText(name, report) {
  const all = Object.entries(report.files).flatMap(([path, { mutants, source }]) =>
    mutants.map((mutant) => ({ ...mutant, path, was: textAt(source, mutant.location) })),
  );
  const counted = (...states) => all.filter((each) => states.includes(each.status)).length;
  const killed = counted("Killed", "Timeout");
  const alive = all.filter((each) => each.status === "Survived" || each.status === "NoCoverage");
  const score = (100 * killed) / (killed + alive.length);
  const kinds = Object.entries(Object.groupBy?.(alive, (each) => each.mutatorName) ?? groups(alive)).sort(
    ([, one], [, other]) => other.length - one.length,
  );
  return `${[
    `${name}: ${score.toFixed(1)} % of ${killed + alive.length} mutants killed; ${alive.length} survived, of which ${counted("NoCoverage")} no test reaches.`,
    "",
    ...kinds.map(([kind, list]) => `${String(list.length).padStart(4)} ${kind}`),
    "",
    ...alive.map(
      (each) =>
        `${each.path}:${each.location.start.line} ${each.mutatorName}: ${short(each.was)} -> ${short(each.replacement ?? "")}`,
    ),
  ].join("\n")}\n`;
}

function groups(list) {
  const found = {};
  for (const each of list) {
    found[each.mutatorName] ??= [];
    found[each.mutatorName].push(each);
  }
  return found;
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
