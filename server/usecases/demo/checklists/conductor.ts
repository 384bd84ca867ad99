/** Particulars and values that give the resistance of a flexible cord's protective conductor. */
export const CORD_PARTICULARS = {
  length: { title: "Length of the cord", type: "number", unit: "m", minimum: 0.3, maximum: 100 },
  csa: { title: "Conductor cross-section", type: "number", unit: "mm2", enum: [0.75, 1, 1.5, 2.5] },
} as const;

const rule = (csa: number, ohmsPerMetre: number) => ({
  when: [csa],
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: ohmsPerMetre,
});

/** Greatest resistance at 20 °C of class 5 (flexible) copper: IEC 60228, table 3; from memory. */
export const CORD_VALUES = {
  joints: {
    title: "Allowance for joints",
    unit: "Ohm",
    const: 0.1,
    basis: "Common practice for portable equipment",
  },
  r_per_m: {
    title: "Conductor resistance per metre",
    unit: "Ohm/m",
    basis: "IEC 60228 class 5 at 20 °C",
    table: {
      policy: "unique",
      inputs: ["asset.csa"],
      rules: [rule(0.75, 0.026), rule(1, 0.0195), rule(1.5, 0.0133), rule(2.5, 0.00798)],
    },
  },
} as const;

export const ELECTRICAL_CAUTIONS = [
  "Disconnect from the supply and look first: damage found by looking stops the test.",
  "No insulation test on electronic, surge-protected, medical or data equipment unless its maker and the competent person agree. Discharge after the test.",
  "Opened enclosures, fixed wiring and live work belong to qualified people.",
] as const;
