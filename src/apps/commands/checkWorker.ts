import { parentPort } from "node:worker_threads";
import { type CheckJob, checkedJob } from "./checkJob.ts";

/** Script of a thread of `checkThreads`: checks the logs it is sent, one after the other, in their order. */
let last: Promise<unknown> = Promise.resolve();
parentPort?.on("message", (job: CheckJob) => {
  last = last.then(async () => parentPort?.postMessage(await checkedJob(job)));
});
