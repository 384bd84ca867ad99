import { fuzzFamily } from "./corpus.ts";

fuzzFamily("language", 4_000_000, 8000);
