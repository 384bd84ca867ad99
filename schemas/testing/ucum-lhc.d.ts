declare module "@lhncbc/ucum-lhc" {
  /** The part of the reference library our tests use; it ships no types. */
  export class UcumLhcUtils {
    static getInstance(): UcumLhcUtils;
    convertUnitTo(from: string, value: number, to: string): { readonly toVal: number | null };
    validateUnitString(code: string): { readonly status: string };
  }
}
