import { type Judged, judgedRecords } from "./judged-records.ts";

declare global {
  interface Window {
    judged?: { readonly compiles: boolean; readonly records: readonly Judged[] } | string;
  }
}

const compiles = (): boolean => {
  try {
    return new Function("return true")() === true;
  } catch {
    return false;
  }
};

judgedRecords().then(
  (records) => {
    window.judged = { compiles: compiles(), records };
  },
  (error: unknown) => {
    window.judged = String(error);
  },
);
