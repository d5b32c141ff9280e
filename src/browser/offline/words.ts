/** Every word about working without network. */
export const OFFLINE = {
  ready: 'A newer version of this site is ready.',
  take: 'Take it now',
  title: 'Not on this device yet',
  text: 'There is no network, and this page has not been opened here before. The pages below are on this device.',
} as const;
