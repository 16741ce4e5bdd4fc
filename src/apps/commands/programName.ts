const NAME = "tallywatt";
/** Lines that npm puts on the path while it runs a script; the user's own shell does not have them. */
const NPM_FOLDER = /[\\/]node_modules[\\/]\.bin[\\/]?$|node-gyp-bin[\\/]?$/;

/**
 * How the user can call the program again: by its name where that is on the path, else through npx, which
 * finds it in the folder where it was set up. `isFile` looks a path up.
 */
export function programName(path: string, separator: string, isFile: (path: string) => boolean): string {
  const folders = path.split(separator).filter((folder) => folder !== "" && !NPM_FOLDER.test(folder));
  const isOnPath = folders.some((folder) =>
    [NAME, `${NAME}.cmd`].some((name) => isFile(`${folder}/${name}`)),
  );
  return isOnPath ? NAME : `npx ${NAME}`;
}

const COMMAND_TO_TYPE = /(^ *|Next: |try: |Help: |Version: |[a-z,]: )tallywatt (?=[a-z-]|COMMAND)/gm;

/** Command lines in a text for people as the user can type them. JSON stays as it is. */
export function asCalled(text: string, program: string): string {
  if (program === NAME || text.startsWith("{")) return text;
  return text.replace(COMMAND_TO_TYPE, (_, before: string) => `${before}${program} `);
}
