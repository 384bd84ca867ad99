import { fuzzFamily } from "./corpus.ts";

fuzzFamily("structure", 1_000_000, 6000);
