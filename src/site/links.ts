/**
 * Addresses of the site's own pages and files, under whatever folder the site is served from.
 */
const base = (import.meta.env?.BASE_URL ?? '/').replace(/\/$/, '');

/** An address from the site's root: `at('/jobs/')`. */
export const at = (path: string) => `${base}${path}`;

export const machineAt = (id: string) => at(`/machines/${id}/`);
export const layUpAt = (id: string) => at(`/machines/${id}/lay-up/`);
export const startUpAt = (id: string) => at(`/machines/${id}/start-up/`);
export const calendarAt = (id = 'all') => at(`/calendar/${id}.ics`);
export const methodAt = (key: string) => at(`/methods/#${anchor(key)}`);

/** A key as an HTML id. */
export const anchor = (key: string) => key.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
