/** One import (or re-export, or dynamic import) of a source file. */
export interface ImportLine {
  /** Path of the importing file below src/, with forward slashes. */
  readonly from: string;
  /** Path below src/ for a relative import, else the package name. */
  readonly to: string;
  readonly isPackage: boolean;
}

export interface SourceFile {
  /** Path below src/. */
  readonly path: string;
  readonly text: string;
}

/**
 * Where each folder stands: a file may import only from folders earlier in this list (and its own).
 * Folders that share a rank do not know each other.
 */
const RANKS: readonly (readonly string[])[] = [
  ["base/remembered"],
  ["base/quantity"],
  ["base/notices"],
  ["base/words"],
  ["base/channels"],
  ["base/statistics"],
  ["physics"],
  ["aircraft"],
  ["log/reading"],
  ["log/recording"],
  ["flight/analysis"],
  ["flight/prediction"],
  ["flight/judgement"],
  ["flight/check"],
  ["season/logbook"],
  ["season/timer"],
  ["season/trends"],
  ["season/overview"],
  ["show/charts"],
  ["show/report"],
  ["apps/disk"],
  ["apps/server"],
  ["apps/page", "apps/folderBook"],
  ["apps/commands"],
  ["index.ts"],
];

/** The one folder that may import each package (the library's parts count with it). */
const DOORS: Readonly<Record<string, string>> = {
  "simple-statistics": "base/statistics",
  "fastest-levenshtein": "base/words",
  papaparse: "log/reading",
  d3: "show/charts",
  commander: "apps/commands",
  valibot: "aircraft",
  "jsonc-parser": "aircraft",
  "proper-lockfile": "apps/disk",
};

/** Files that others may enter a folder by beside its index: small ones that do not load the whole folder. */
const MORE_DOORS = [
  "aircraft/facts.ts",
  "aircraft/budget.ts",
  "flight/analysis/measures.ts",
  "flight/analysis/currentDoubt.ts",
  "apps/server/bookClient.ts",
];

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s*["']([^"']+)["']|import\(\s*["']([^"']+)["']\s*\)|(?:^|\n)\s*import\s*["']([^"']+)["']/g;

export function importsOf(file: SourceFile): readonly ImportLine[] {
  return [...file.text.matchAll(IMPORT)].map((match) => {
    const target = match[1] ?? match[2] ?? match[3] ?? "";
    if (target.startsWith(".")) {
      return { from: file.path, to: resolvePath(file.path, target), isPackage: false };
    }
    return { from: file.path, to: target, isPackage: true };
  });
}

function resolvePath(from: string, target: string): string {
  const parts = from.split("/").slice(0, -1);
  for (const part of target.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== ".") parts.push(part);
  }
  return parts.join("/");
}

/** The ranked folder that a path belongs to, or null. */
export function folderOf(path: string): string | null {
  const all = RANKS.flat().sort((one, other) => other.length - one.length);
  return all.find((folder) => path === folder || path.startsWith(`${folder}/`)) ?? null;
}

function rankOf(folder: string): number {
  return RANKS.findIndex((rank) => rank.includes(folder));
}

/** Everything that breaks the direction, the doors or the budget rule, one sentence each. */
export function violations(files: readonly SourceFile[]): readonly string[] {
  const lines = files.flatMap((file) => importsOf(file));
  return [
    ...files
      .filter((file) => folderOf(file.path) === null)
      .map((file) => `${file.path} lies in no folder of the house`),
    ...lines.flatMap((line) => (line.isPackage ? packageViolation(line) : relativeViolation(line))),
    ...packageDoorViolations(lines),
    ...files.flatMap(networkViolation),
    ...cycles(lines).map((cycle) => `cycle: ${cycle.join(" -> ")}`),
  ];
}

function relativeViolation(line: ImportLine): readonly string[] {
  const from = folderOf(line.from);
  const to = folderOf(line.to);
  if (from === null || to === null)
    return to === null ? [`${line.from} imports ${line.to}, outside the house`] : [];
  if (from === to) return [];
  const found: string[] = [];
  if (rankOf(to) >= rankOf(from)) found.push(`${line.from} imports ${line.to}, which is not upstream`);
  if (!isDoor(line.to, to)) found.push(`${line.from} imports ${line.to}, not the folder's door`);
  if (from === "flight/analysis" && line.to.startsWith("aircraft/") && line.to !== "aircraft/facts.ts") {
    found.push(`${line.from} imports ${line.to}: measuring may know only the facts`);
  }
  return found;
}

function isDoor(path: string, folder: string): boolean {
  return path === `${folder}/index.ts` || path === folder || MORE_DOORS.includes(path);
}

function packageName(specifier: string): string {
  const parts = specifier.split("/");
  return specifier.startsWith("@") ? parts.slice(0, 2).join("/") : (parts[0] ?? specifier);
}

function packageViolation(line: ImportLine): readonly string[] {
  const name = packageName(line.to);
  const isNode = line.to.startsWith("node:");
  if (isNode && !/^apps\/(disk|folderBook|server|commands)\//.test(line.from)) {
    return [`${line.from} imports ${line.to}: only disk, folderBook, server and commands touch the machine`];
  }
  if (/^node:(http|https|net|dgram|tls)$/.test(line.to) && !line.from.startsWith("apps/server/")) {
    return [`${line.from} imports ${line.to}: only the server touches the network`];
  }
  const door = DOORS[name];
  if (door !== undefined && folderOf(line.from) !== door) {
    return [`${line.from} imports ${name}, whose door is ${door}`];
  }
  return [];
}

/** Ways to the network that need no import: in a browser and in Node. */
const NETWORK_CALL =
  /\b(?:fetch|importScripts)\s*\(|\b(?:XMLHttpRequest|WebSocket|EventSource|sendBeacon|RTCPeerConnection|WebTransport)\b/;

function networkViolation({ path, text }: SourceFile): readonly string[] {
  const found = path.startsWith("apps/server/") ? null : NETWORK_CALL.exec(text);
  return found === null ? [] : [`${path} has ${found[0]}: only the server touches the network`];
}

/** A package that only one file may import (its door) must not be imported by a second file. */
function packageDoorViolations(lines: readonly ImportLine[]): readonly string[] {
  const single = ["papaparse", "d3", "commander"];
  return single.flatMap((name) => {
    const importers = [
      ...new Set(
        lines.filter((line) => line.isPackage && packageName(line.to) === name).map((line) => line.from),
      ),
    ];
    return importers.length > 1 ? [`${name} has ${importers.length} doors: ${importers.join(", ")}`] : [];
  });
}

/** Import cycles between files, each once. */
export function cycles(lines: readonly ImportLine[]): readonly (readonly string[])[] {
  const next = new Map<string, string[]>();
  for (const line of lines) {
    if (!line.isPackage) next.set(line.from, [...(next.get(line.from) ?? []), line.to]);
  }
  const done = new Set<string>();
  const found: string[][] = [];
  const walk = (path: string, trail: readonly string[]): void => {
    const seenAt = trail.indexOf(path);
    if (seenAt >= 0) found.push([...trail.slice(seenAt), path]);
    if (seenAt >= 0 || done.has(path)) return;
    for (const to of next.get(path) ?? []) walk(to, [...trail, path]);
    done.add(path);
  };
  for (const path of next.keys()) walk(path, []);
  return found;
}
