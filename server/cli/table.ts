/** Cells below each other in columns as wide as their widest, two spaces apart. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  for (const row of rows)
    for (const [index, cell] of row.entries())
      widths[index] = Math.max(widths[index] ?? 0, cell.length);
  return rows
    .map((row) =>
      row
        .map((cell, index) => cell.padEnd(widths[index] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
