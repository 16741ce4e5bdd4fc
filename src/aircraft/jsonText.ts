import {
  applyEdits,
  findNodeAtLocation,
  getNodeValue,
  modify,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from "jsonc-parser";
import type { KeyPath } from "./schemaWalk.ts";

/** An aircraft file is a page of text; more than this is another file. */
export const MOST_CHARACTERS = 1_000_000;
const DEEPEST_NESTING = 100;

export type JsonNode = Node;

/** JSON with comments and trailing commas, with the line of every key. */
export interface JsonText {
  readonly root: Node | undefined;
  readonly firstError: { readonly line: number; readonly code: string } | null;
  readonly lineAt: (offset: number) => number;
}

export function readJsonText(text: string): JsonText {
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true, disallowComments: false });
  const lineAt = (offset: number): number => lineOfOffset(text, offset);
  const first = errors[0];
  const firstError = first ? { line: lineAt(first.offset), code: codeOf(text, first) } : null;
  return { root, firstError, lineAt };
}

/** "3,5": the reader stumbles over the digits after the comma, which it takes for the next key. */
function codeOf(text: string, { error, offset }: ParseError): string {
  const code = printParseErrorCode(error);
  const isDecimalComma = /:\s*-?\d+,$/.test(text.slice(0, offset)) && /^\d/.test(text.slice(offset));
  return code === "PropertyNameExpected" && isDecimalComma ? "DecimalComma" : code;
}

/** True when parsing it would be pointless or could exhaust the stack. */
export function isTooLarge(text: string): boolean {
  if (text.length > MOST_CHARACTERS) return true;
  let depth = 0;
  for (const character of text) {
    if (character === "{" || character === "[") depth += 1;
    else if (character === "}" || character === "]") depth -= 1;
    if (depth > DEEPEST_NESTING) return true;
  }
  return false;
}

/** Line of the value at a path, or of the nearest part above it that exists. */
export function lineOfPath(json: JsonText, path: KeyPath): number {
  for (let length = path.length; length > 0; length -= 1) {
    const node = json.root && findNodeAtLocation(json.root, path.slice(0, length));
    if (node) return json.lineAt(node.parent?.type === "property" ? node.parent.offset : node.offset);
  }
  return json.lineAt(json.root?.offset ?? 0);
}

/** The value at a path as plain data; undefined where there is none. */
export function valueAt({ root }: JsonText, path: KeyPath): unknown {
  const node = root && findNodeAtLocation(root, [...path]);
  return node && getNodeValue(node);
}

/** The text with the value at a path set; everything else of it, comments too, stays. */
export function editJsonText(text: string, path: KeyPath, value: unknown): string {
  const formattingOptions = { insertSpaces: true, tabSize: 2, eol: text.includes("\r\n") ? "\r\n" : "\n" };
  return applyEdits(text, modify(text, [...path], value, { formattingOptions }));
}

/** The value as plain data; call it only when no key is unknown. */
export function plainValue(node: Node): unknown {
  return getNodeValue(node);
}

/** One key of an object in the text, with the path that leads to it. */
export interface KeyInText {
  readonly path: KeyPath;
  readonly offset: number;
}

/** Every key of the text, outermost first. */
export function keysInText(node: Node, path: KeyPath = []): readonly KeyInText[] {
  const children = node.children ?? [];
  if (node.type === "array") return children.flatMap((child, index) => keysInText(child, [...path, index]));
  if (node.type !== "object") return [];
  return children.flatMap((property) => {
    const [key, value] = property.children ?? [];
    if (!key) return [];
    const inner = [...path, String(key.value)];
    return [{ path: inner, offset: key.offset }, ...(value ? keysInText(value, inner) : [])];
  });
}

function lineOfOffset(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}
