/** Every word about working without network. */
export const OFFLINE = {
  ready: 'A newer version of this site is ready.',
  take: 'Take it now',
  kept: 'This site is on this device and opens without network.',
  keptPartly:
    'The agenda and as many machines as fit are on this device and open without network; each other page once it was opened here.',
  title: 'Not on this device yet',
  text: 'There is no network, and this page has not been opened here before. The pages below are on this device.',
  machines: 'Machines on this device',
} as const;
