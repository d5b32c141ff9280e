/**
 * The calendar date in a time zone.
 * @param zone - IANA name; one that the device does not know is taken as UTC
 * @param now - an instant [ms since 1970]
 * @returns "YYYY-MM-DD"
 */
export function dayIn(zone: string | undefined, now: number): string {
  const style = { calendar: 'gregory', year: 'numeric', month: '2-digit', day: '2-digit' } as const;
  let format: Intl.DateTimeFormat;
  try {
    format = new Intl.DateTimeFormat('en', { ...style, timeZone: zone });
  } catch {
    format = new Intl.DateTimeFormat('en', { ...style, timeZone: 'UTC' });
  }
  const parts = format.formatToParts(now);
  const part = (type: string) => parts.find((p) => p.type === type)?.value ?? '';
  return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}
