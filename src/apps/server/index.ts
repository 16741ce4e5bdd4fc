export {
  type PageServer,
  type PageServerOptions,
  PortTakenError,
  startPageServer,
} from "./startPageServer.ts";
