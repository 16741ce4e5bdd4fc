// esbuild plugin: an import through a folder's index.ts goes straight to the file that holds the name.
// Without it a command that takes one function through a door loads every module behind that door: esbuild
// assigns modules to parts by their imports, before it drops what nobody uses.
import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";

const NAMED = /^(import|export)\s+(type\s+)?\{([^}]*)\}\s+from\s+"(\.[^"]+\.ts)";/gm;

/** @returns {import("esbuild").Plugin} */
export function throughDoors() {
  const doors = new Map();
  return {
    name: "through doors",
    setup(build) {
      build.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, async ({ path }) => {
        const text = await readFile(path, "utf8");
        return { contents: isDoor(path) ? text : straightened(text, dirname(path), doors), loader: "ts" };
      });
    },
  };
}

const isDoor = (path) => /[\\/]index\.ts$/.test(path);

function straightened(text, folder, doors) {
  return text.replace(NAMED, (whole, keyword, isType, names, from) => {
    const door = resolve(folder, from);
    if (keyword !== "import" || isType !== undefined || !isDoor(door)) return whole;
    return namesIn(names)
      .filter(({ isType: isTypeName }) => !isTypeName)
      .map(({ name, as }) => {
        const home = homeOf(door, name, doors);
        return `import { ${home.name} as ${as} } from ${JSON.stringify(home.path)};`;
      })
      .join(" ");
  });
}

/** The file behind a door that holds a name, and its name there. */
function homeOf(door, name, doors) {
  if (!doors.has(door)) doors.set(door, namesOfDoor(door));
  const home = doors.get(door).get(name);
  if (home === undefined) return { path: door, name };
  return isDoor(home.path) ? homeOf(home.path, home.name, doors) : home;
}

function namesOfDoor(door) {
  const names = new Map();
  for (const [, keyword, isType, list, from] of readFileSync(door, "utf8").matchAll(NAMED)) {
    if (keyword !== "export" || isType !== undefined) continue;
    for (const { name, as } of namesIn(list)) names.set(as, { path: resolve(dirname(door), from), name });
  }
  return names;
}

function namesIn(list) {
  return list
    .split(",")
    .map((one) => one.trim())
    .filter((one) => one !== "")
    .map((one) => {
      const [, type, name, as] = /^(type\s+)?(\S+)(?:\s+as\s+(\S+))?$/.exec(one);
      return { isType: type !== undefined, name, as: as ?? name };
    });
}
