export { once } from "./once.ts";
export { rememberedBy } from "./rememberedBy.ts";
export { rememberedOf } from "./rememberedOf.ts";
