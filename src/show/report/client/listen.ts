import type { Stack } from "./stack.ts";

/** A pointer that moved less than this between down and up was a tap, not a drag. Pixels. */
const TAP_PX = 6;

const KEY_ACTIONS: Readonly<Record<string, string>> = { "+": "in", "=": "in", "-": "out", "0": "whole" };

/** Connects keys, pointer and buttons of one flight's panels. */
export function listen(stack: Stack, section: HTMLElement): void {
  for (const { pad } of stack.panels) {
    pad.addEventListener("keydown", (event) => onKey(stack, event));
    onPointer(stack, pad);
  }
  for (const button of section.querySelectorAll<HTMLButtonElement>("[data-act]")) {
    button.addEventListener("click", () => stack.act(button.dataset.act ?? ""));
  }
}

function onKey(stack: Stack, event: KeyboardEvent): void {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const step = event.shiftKey ? 10 : 1;
  const moves: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => stack.moveBy(-step),
    ArrowDown: () => stack.moveBy(-step),
    ArrowRight: () => stack.moveBy(step),
    ArrowUp: () => stack.moveBy(step),
    Home: () => stack.moveTo(0),
    End: () => stack.moveTo(stack.times.length - 1),
    Escape: () => stack.clear(),
  };
  const action = KEY_ACTIONS[event.key];
  const move = moves[event.key] ?? (action === undefined ? undefined : () => stack.act(action));
  if (move === undefined) return;
  event.preventDefault();
  move();
}

function onPointer(stack: Stack, pad: HTMLElement): void {
  let downX: number | null = null;
  const share = (clientX: number) => {
    const { left, width } = pad.getBoundingClientRect();
    return width > 0 ? (clientX - left) / width : 0;
  };
  const isDrag = (event: PointerEvent) => downX !== null && Math.abs(event.clientX - downX) >= TAP_PX;
  const end = () => {
    downX = null;
    stack.select(null, 0);
  };
  pad.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    downX = event.clientX;
    pad.setPointerCapture(event.pointerId);
  });
  pad.addEventListener("pointermove", (event) => {
    if (downX !== null && isDrag(event)) stack.select(share(downX), share(event.clientX));
    else if (downX === null && event.pointerType === "mouse")
      stack.pointAt(stack.timeAt(share(event.clientX)));
  });
  pad.addEventListener("pointerup", (event) => {
    if (downX !== null && isDrag(event)) {
      const ends = [stack.timeAt(share(downX)), stack.timeAt(share(event.clientX))].sort((a, b) => a - b);
      stack.show({ fromS: ends[0] ?? 0, toS: ends[1] ?? 0 });
    } else if (downX !== null) stack.pointAt(stack.timeAt(share(event.clientX)));
    end();
  });
  pad.addEventListener("pointercancel", end);
}
