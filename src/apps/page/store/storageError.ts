/** The place where the book lives could not do what was asked; the text says what to do. Nothing was changed. */
export class StorageError extends Error {
  constructor(text: string, options: ErrorOptions = {}) {
    super(text, options);
    this.name = "StorageError";
  }
}
