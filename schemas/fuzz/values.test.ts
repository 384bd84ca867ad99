import { fuzzFamily } from "./corpus.ts";

fuzzFamily("values", 2_000_000, 6000);
