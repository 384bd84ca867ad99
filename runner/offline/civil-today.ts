/** ISO civil date at an IANA zone of an instant in milliseconds UTC. */
export const civilDateIn = (zone: string, instant: number): string => {
  const parts = new Intl.DateTimeFormat("en-u-ca-iso8601-nu-latn", {
    timeZone: zone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
  }).formatToParts(instant);
  const part = (type: string) => parts.find((found) => found.type === type)?.value ?? "";
  return `${part("year")}-${part("month")}-${part("day")}`;
};
