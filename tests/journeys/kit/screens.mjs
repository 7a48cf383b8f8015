// Every screen of the app and the address that leads there, for the pictures and for the check of who can reach them.

/** Screens that stand without a project as well. */
export const BARE = [
  ['start', '#'],
  ['now', '#now'],
  ['places', '#places'],
  ['scenes', '#scenes'],
  ['days', '#days'],
  ['stops', '#stops'],
  ['sight', '#sight'],
  ['projects', '#projects'],
  ['settings', '#about'],
  ['shot-list', '#shot-list'],
];

/** Screens of the demo's own places and set-ups. */
export const OF_THE_DEMO = [
  ['location', '#location/sail-loft'],
  ['location-outdoors', '#location/salt-pans'],
  ['room', '#room/loft'],
  ['set-up', '#set-up/set-up-4a'],
  ['year', '#year/set-up-4a'],
  ['only-here', '#only-here/set-up-4a'],
  ['lighting-plan', '#lighting-plan/set-up-4a'],
];
