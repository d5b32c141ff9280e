/** The spreadsheet of a club: a row for each member's machine, as its secretary would keep it. */

const KINDS = ['motorcycle', 'motorcycle', 'motorcycle', 'scooter', 'motorcycle', 'car'] as const;
const CHEMISTRIES = ['flooded', 'agm', 'agm', 'gel', 'flooded', 'lifepo4'] as const;

/** @returns CSV with `count` rows under the names of the columns */
export function members(count: number): string {
  const rows = Array.from({ length: count }, (_, i) => {
    const kind = KINDS[i % KINDS.length]!;
    const capacity = kind === 'car' ? 45 + (i % 4) * 5 : 8 + (i % 7) * 2;
    const tank = kind === 'car' ? 45 : kind === 'scooter' ? 8 : 14 + (i % 6);
    return [
      `member-${String(i + 1).padStart(3, '0')}`,
      `"Member ${i + 1}, ${kind}"`,
      kind,
      'hall',
      `"Row ${String.fromCharCode(65 + Math.floor(i / 30))}, ${(i % 30) + 1}"`,
      CHEMISTRIES[(i * 5) % CHEMISTRIES.length]!,
      `${capacity} Ah`,
      i % 3 === 0 ? 'carburettor' : 'injection',
      `${tank} L`,
      'E10',
      i % 2 === 0 ? 'liquid' : 'air',
      `2026-10-${String(1 + (i % 28)).padStart(2, '0')}`,
      `2027-04-${String(3 + (i % 25)).padStart(2, '0')}`,
      // Every third has an alarm that stays armed.
      ...(i % 3 === 0 ? [`${1 + (Math.floor(i / 3) % 2)} mA`, 'yes'] : ['', '']),
    ].join(',');
  });
  return [
    'id,name,kind,place,spot,battery.chemistry,battery.capacity,fuel.delivery,fuel.tank,fuel.blend,cooling,lastUse,firstUse,battery.drain,battery.connected',
    ...rows,
    '',
  ].join('\n');
}
