import { FULL_CELL_V } from "./defaults.ts";
import { type JsonText, lineOfPath } from "./jsonText.ts";
import { NUMBER_KEYS, type NumberKey, rangeText } from "./keys.ts";
import type { Problem } from "./problem.ts";
import type { AircraftFile } from "./schema.ts";
import { choicesAt, type KeyPath, keysAt, pathText } from "./schemaWalk.ts";
import { aircraftSentences } from "./sentences.ts";
import { type ValueIssue, validate } from "./validate.ts";

const SHOWN_CHARACTERS = 40;
const REQUIRED_PATHS: readonly string[] = ["name", "pack", "pack.cells"];

export type CheckedValues =
  | { readonly state: "right"; readonly file: AircraftFile }
  | { readonly state: "wrong"; readonly problems: readonly Problem[] };

/** The checked file, or what is wrong with its values. */
export function checkValues(file: string, json: JsonText, value: unknown): CheckedValues {
  const validated = validate(value);
  if (validated.state === "wrong") {
    return { state: "wrong", problems: validated.issues.map((issue) => problemOf(file, json, issue)) };
  }
  const problems = contradictions(file, json, validated.file);
  return problems.length > 0 ? { state: "wrong", problems } : validated;
}

function problemOf(file: string, json: JsonText, { path, input }: ValueIssue): Problem {
  const line = lineOfPath(json, path);
  const place = `${file} line ${line}`;
  const text = valueSentence(place, path, input);
  const code = input === undefined ? "aircraft-key-missing" : "aircraft-value-wrong";
  return { code, line, text };
}

function valueSentence(place: string, path: KeyPath, input: unknown): string {
  const written = pathText(path);
  const { allowed, example } = allowedAt(path);
  if (input === undefined) return aircraftSentences.missing(place, written, example);
  const isRequired = REQUIRED_PATHS.includes(written);
  if (input === null && !isRequired) return aircraftSentences.nullValue(place, written);
  const key = numberKeyAt(path);
  if (key && typeof input === "string" && Number.isFinite(Number(input)) && input.trim() !== "") {
    return aircraftSentences.numberInQuotes(place, written, shown(input), String(Number(input)));
  }
  return aircraftSentences.wrongValue(place, written, shown(input), allowed, example);
}

function allowedAt(path: KeyPath): { readonly allowed: string; readonly example: string } {
  const name = String(path.at(-1));
  const key = numberKeyAt(path);
  if (key) return { allowed: rangeText(key), example: `"${name}": ${key.example}` };
  const choices = choicesAt(path);
  if (choices) return { allowed: `one of ${choices.join(", ")}`, example: `"${name}": "${choices[0]}"` };
  if (keysAt(path))
    return { allowed: "a part in { }", example: `"${name}": ${name === "pack" ? '{ "cells": 8 }' : "{ }"}` };
  if (name === "readings") return { allowed: "a list in [ ]", example: '"readings": []' };
  return { allowed: "text of 1 to 200 characters in double quotes", example: `"${name}": "Tern"` };
}

function numberKeyAt(path: KeyPath): NumberKey | null {
  const name = path.filter((step) => typeof step === "string").join(".");
  return name in NUMBER_KEYS ? NUMBER_KEYS[name as keyof typeof NUMBER_KEYS] : null;
}

function shown(input: unknown): string {
  const text = JSON.stringify(input) ?? String(input);
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}

/** Values that are each allowed but cannot both be true. */
function contradictions(file: string, json: JsonText, given: AircraftFile): readonly Problem[] {
  const problems: Problem[] = [];
  const add = (path: KeyPath, sentence: (place: string) => string): void => {
    const line = lineOfPath(json, path);
    problems.push({ code: "aircraft-contradiction", line, text: sentence(`${file} line ${line}`) });
  };
  const { continuousA, burstA } = given.controller;
  if (continuousA !== undefined && burstA !== undefined && burstA < continuousA) {
    add(["controller", "burstA"], (place) =>
      aircraftSentences.burstBelowContinuous(place, burstA, continuousA),
    );
  }
  const { chemistry, minLoadedCellV } = given.pack;
  const fullCellV = given.pack.fullCellV ?? FULL_CELL_V[chemistry];
  if (minLoadedCellV !== undefined && minLoadedCellV >= fullCellV) {
    add(["pack", "minLoadedCellV"], (place) =>
      aircraftSentences.loadedAboveFull(place, minLoadedCellV, fullCellV),
    );
  }
  return problems;
}
