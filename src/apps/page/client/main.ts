import { type Answers, type CheckAnswer, NO_ANSWERS } from "../messages.ts";
import { type Core, startCore } from "./core.ts";
import { button, element, placeOf } from "./element.ts";
import { columnsPanel } from "./question.ts";
import { showReport } from "./showReport.ts";

interface Log {
  readonly file: File;
  readonly words: HTMLElement;
  answers: Answers | null;
  answer: CheckAnswer | null;
}

/** Only in this page's memory: closing it forgets all. */
const remembered: Record<string, Answers> = Object.create(null) as Record<string, Answers>;
let aircraft: { readonly name: string; readonly text: string } | null = null;
const logs: Log[] = [];
let open: Log | null = null;

function tell(words: string): void {
  placeOf("status").textContent = words;
}

async function start(): Promise<void> {
  const core = await startCore();
  if (!core.isWorker) placeOf("slow").hidden = false;
  wire("choose-logs", "logs-input", (files) => addLogs(core, files));
  wire("choose-aircraft", "aircraft-input", (files) => takeAircraft(core, files[0]));
  placeOf("export-aircraft").addEventListener("click", exportAircraft);
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    void addLogs(core, [...(event.dataTransfer?.files ?? [])]);
  });
  tell("Ready for a log.");
}

function wire(buttonId: string, inputId: string, take: (files: readonly File[]) => Promise<void>): void {
  const input = placeOf(inputId) as HTMLInputElement;
  placeOf(buttonId).addEventListener("click", () => input.click());
  input.addEventListener("change", () => {
    const files = [...(input.files ?? [])];
    input.value = "";
    void take(files);
  });
}

async function addLogs(core: Core, files: readonly File[]): Promise<void> {
  const added = files.map((file): Log => ({ file, words: element("span"), answers: null, answer: null }));
  for (const log of added) {
    logs.push(log);
    const show = button(log.file.name, () => showLog(core, log));
    log.words.textContent = "waiting";
    placeOf("logs").append(element("li", {}, show, " ", log.words));
  }
  for (const log of added) await check(core, log);
}

async function check(core: Core, log: Log): Promise<void> {
  log.words.textContent = "being read";
  tell(`Reading ${log.file.name}.`);
  try {
    const bytes = await log.file.arrayBuffer();
    const { answers, file } = log;
    const work = {
      kind: "check",
      file: file.name,
      bytes,
      aircraft: aircraft?.text ?? null,
      answers,
    } as const;
    log.answer = await core.ask({ ...work, remembered });
    log.words.textContent = stateWords(log.answer);
    tell(`${file.name}: ${log.words.textContent}.`);
    const signature = log.answer.check.log.headerSignature;
    if (answers !== null && log.answer.check.flights.length > 0 && signature !== null)
      remembered[signature] = answers;
    if (open === null || open === log || open.answer === null) showLog(core, log);
  } catch (error) {
    log.words.textContent = `could not be read: ${error instanceof Error ? error.message : String(error)}`;
    tell(`${log.file.name} ${log.words.textContent}`);
  }
}

function stateWords({ check, isRemembered }: CheckAnswer): string {
  const severities = check.log.notices.map(({ severity }) => severity);
  if (severities.includes("refusal")) return "cannot be used, see why";
  if (severities.includes("question")) return "needs an answer";
  const count = check.flights.length;
  return `${count} ${count === 1 ? "flight or run" : "flights or runs"}${isRemembered ? ", read as you answered before" : ""}`;
}

function showLog(core: Core, log: Log): void {
  open = log;
  if (log.answer === null) return;
  showReport(placeOf("report"), log.answer.report, log.answer.check);
  const panel = columnsPanel(log.answer, log.answers, (answers) => {
    log.answers = { ...NO_ANSWERS, ...answers };
    void check(core, log);
  });
  const isOpen = log.answer.check.flights.length === 0;
  const details = element(
    "details",
    isOpen ? { open: "" } : {},
    element("summary", {}, "How the columns are read, and how to correct it"),
    panel,
  );
  placeOf("question").replaceChildren(details);
}

async function takeAircraft(core: Core, file: File | undefined): Promise<void> {
  if (file === undefined) return;
  const text = await file.text();
  const { name, notices } = await core.ask({ kind: "aircraft", text, file: file.name });
  if (name === null) {
    placeOf("aircraft").textContent = notices.map((notice) => notice.text).join(" ");
    return;
  }
  aircraft = { name, text };
  placeOf("aircraft").textContent = `Held against the plan and limits of ${name}.`;
  placeOf("export-aircraft").hidden = false;
  for (const log of logs) await check(core, log);
}

function exportAircraft(): void {
  if (aircraft === null) return;
  const address = URL.createObjectURL(new Blob([aircraft.text], { type: "application/json" }));
  element("a", { href: address, download: "aircraft.json" }).click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

void start().catch((error: unknown) => tell(`This browser cannot run the analysis: ${String(error)}`));
