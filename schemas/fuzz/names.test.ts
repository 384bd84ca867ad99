import { fuzzFamily } from "./corpus.ts";

fuzzFamily("names", 3_000_000, 5000);
