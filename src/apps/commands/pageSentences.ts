/** Every sentence of the page command. */
export const pageSentences = {
  saved: (file: string, kilobytes: number): string =>
    `Wrote ${file}, ${kilobytes} kB. Open it in a browser; it asks for no network.`,
  saveAlone: (option: string): string =>
    `${option} does nothing with --save: a saved page keeps its logbook in the browser. Leave one of the two out.`,
  serves: (folder: string): string =>
    `The page of the logbook ${folder}. Open the address below in a browser.`,
  howToEnd: (): string => "It works while this program runs. Ctrl-C ends it.",
  ended: (): string => "The page has ended. What was added is in the logbook.",
  portTaken: (port: number): string =>
    `Port ${port} is in use or not allowed. Take another, or leave --port out for a free one.`,
};
