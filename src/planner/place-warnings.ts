/** What is doubtful about a place: its climate decides every date and every depth of cold. */
import type { Coordinates, Place } from './household.ts';
import type { Warning } from './season-plan.ts';

/**
 * Coordinates that are not where the household's clocks are, where a minus or the order of the two would put them right.
 * @param places - of the household
 * @param zone - of its clocks, by its IANA name
 */
export function placeWarnings(places: readonly Place[], zone: string): Warning[] {
  return places.flatMap(({ id, name, station, doubtfulNear }): Warning[] => {
    if (!doubtfulNear) return [];
    const { given, meant } = doubtfulNear;
    return [
      {
        level: 'warning',
        about: 'place',
        text: `${name} is given at ${written(given)}${station ? `, near ${station.name}` : ''}: that is not where clocks keep the time of ${zone}. Every date and every cold to be reckoned with hangs on it.`,
        act: `If a minus or the order was lost, write near: [${meant.join(', ')}] in places/${id}.yaml; south and west are negative, latitude comes first. If the place is there, name the station instead, and this is not said any more.`,
      },
    ];
  });
}

const written = ([latitude, longitude]: Coordinates) =>
  `${Math.abs(latitude)}° ${latitude < 0 ? 'south' : 'north'}, ${Math.abs(longitude)}° ${longitude < 0 ? 'west' : 'east'}`;
