import { reasonOf } from "../reasonOf.ts";
import { AircraftPlace } from "./aircraftPlace.ts";
import { BookPlace } from "./bookPlace.ts";
import { startCore } from "./core.ts";
import { CountedLogs } from "./countedLogs.ts";
import { placeOf } from "./element.ts";
import { logPlace } from "./logPlace.ts";
import { Logs } from "./logs.ts";
import { Places } from "./places.ts";
import { Session } from "./session.ts";
import { SwapPlace } from "./swapPlace.ts";
import { tell, whyFailed } from "./tell.ts";
import { unitsChoice } from "./unitsChoice.ts";
import { clientWords } from "./words.ts";

async function start(): Promise<void> {
  const core = await startCore();
  const session = new Session(core, new Places());
  if (!core.isWorker) placeOf("slow").hidden = false;
  placeOf("kept").textContent = core.place.text;
  unitsChoice(session);
  const logs = new Logs(session);
  const counted = new CountedLogs(session, logs);
  const aircraft = new AircraftPlace(session, logs, counted);
  new BookPlace(session);
  new SwapPlace(session, logs, counted);
  logPlace(session, logs, (file) => aircraft.take(file));
  // A book that cannot be reached is said; logs can be read all the same.
  tell(await aircraft.openFromBook().then(() => clientWords.ready, whyFailed));
  document.body.dataset.state = "ready";
}

start().catch((error: unknown) => tell(clientWords.notStarted(reasonOf(error))));
