import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { type CheckJob, checkedJob, type JobResult } from "./checkJob.ts";

/** Threads that check logs beside each other. */
export interface CheckThreads {
  /** How many jobs keep all threads busy. */
  readonly jobsAtOnce: number;
  /** Never rejects: a job whose thread fails is done on this one. */
  run(job: CheckJob): Promise<JobResult>;
  end(): void;
}

/** A thread starts with nothing compiled: for fewer logs it does not pay (two cores, logs of 6,000 rows). */
const LEAST_LOGS_EACH = 4;
/** Each thread holds a heap of its own and the logs it was sent. */
const MOST_THREADS = 8;
/** One job runs, one waits. */
const JOBS_EACH = 2;

/** Threads for so many logs, running `script`; null where one is enough, or where none may be started. */
export function checkThreads(script: string, logs: number): CheckThreads | null {
  const count = Math.min(availableParallelism(), MOST_THREADS, Math.floor(logs / LEAST_LOGS_EACH));
  if (count < 2) return null;
  const threads: Thread[] = [];
  try {
    while (threads.length < count) threads.push(startThread(script));
  } catch {
    for (const thread of threads) thread.end();
    return null;
  }
  return {
    jobsAtOnce: JOBS_EACH * count,
    run: (job) => threads.reduce((a, b) => (b.waiting() < a.waiting() ? b : a)).run(job),
    end: () => {
      for (const thread of threads) thread.end();
    },
  };
}

interface WaitingJob {
  readonly job: CheckJob;
  readonly done: (result: JobResult | Promise<JobResult>) => void;
}

type Thread = ReturnType<typeof startThread>;

function startThread(script: string) {
  const worker = new Worker(script);
  const queue: WaitingJob[] = [];
  let isAlive = true;
  const fail = (): void => {
    isAlive = false;
    for (const { job, done } of queue.splice(0)) done(checkedJob(job));
  };
  worker.on("message", (result: JobResult) => queue.shift()?.done(result));
  worker.on("messageerror", fail);
  worker.on("error", fail);
  worker.on("exit", fail);
  return {
    waiting: () => (isAlive ? queue.length : Number.POSITIVE_INFINITY),
    run: (job: CheckJob): Promise<JobResult> => {
      if (!isAlive) return checkedJob(job);
      // Answers come in the order of the jobs, so one that cannot be sent must not stand in the queue.
      try {
        worker.postMessage(job);
      } catch {
        return checkedJob(job);
      }
      return new Promise((done) => queue.push({ job, done }));
    },
    end: () => {
      queue.length = 0;
      void worker.terminate();
    },
  };
}
