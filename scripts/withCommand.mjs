// esbuild plugin: the program with the code of one command in it. The other commands stay outside: which one is called
// is known before this program is loaded.
import { readFile } from "node:fs/promises";

const REGISTRY = /[\\/]commands[\\/]registry\.ts$/;

/** @returns {import("esbuild").Plugin} */
export function withCommand(name) {
  const [own, load] = [`./${name}.ts`, `import("./${name}.ts")`];
  return {
    name: "with command",
    setup(build) {
      build.onLoad({ filter: REGISTRY }, async ({ path }) => {
        const text = await readFile(path, "utf8");
        if (!text.includes(load)) throw new Error(`the registry does not load ${own}`);
        const loaded = text.replace(load, "Promise.resolve(own)");
        return { contents: `import * as own from ${JSON.stringify(own)};\n${loaded}`, loader: "ts" };
      });
      build.onResolve({ filter: /^\.\// }, ({ path, kind, importer }) =>
        kind === "dynamic-import" && REGISTRY.test(importer) ? { path, external: true } : undefined,
      );
    },
  };
}
