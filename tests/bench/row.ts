/** One line of the table: a figure and what it is set against, measured in the same run. */
export interface Row {
  readonly what: string;
  readonly against: string;
  readonly ratio: number | null;
  readonly figure: string;
  /** What the figure has to reach, and whether it did. */
  readonly target?: string;
  readonly met?: boolean;
}

const perSecond = (rate: number): string =>
  `${Math.round(rate).toLocaleString("en-GB").replaceAll(",", " ")}/s`;

export const rateRow = (
  what: string,
  against: string,
  rate: number,
  other: number,
  unit: string,
): Row => ({
  what,
  against,
  ratio: rate / other,
  figure: `${perSecond(rate)} ${unit} against ${perSecond(other)}`,
});

export const printTable = (rows: readonly Row[]): string => {
  const cells = rows.map((row) => [
    row.what,
    row.against,
    row.ratio === null ? "" : row.ratio.toFixed(2),
    row.figure,
    row.target === undefined ? "" : `${row.target}: ${row.met ? "met" : "missed"}`,
  ]);
  const head = ["what", "against", "ratio", "figures", "target"];
  const widths = head.map((title, at) =>
    Math.max(title.length, ...cells.map((line) => (line[at] ?? "").length)),
  );
  const line = (parts: readonly string[]) =>
    parts
      .map((part, at) => part.padEnd(widths[at] ?? 0))
      .join("  ")
      .trimEnd();
  return [line(head), line(widths.map((width) => "-".repeat(width))), ...cells.map(line)].join(
    "\n",
  );
};
