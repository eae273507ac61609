/** Every word the element says of its own. */
export const defaultStrings = {
  read: 'Arrow keys or the pointer read each point; T shows the table.',
  table: 'Show the table',
  picture: 'Show the picture',
  nearer: 'Nearer',
  wider: 'Wider',
  whole: 'All of it',
  zoomKeys: 'Plus and minus look nearer and wider, 0 at all of it.',
  loading: 'Drawing',
  failed: 'The picture could not be drawn; here is its table.',
};

export type ChartStrings = Readonly<typeof defaultStrings>;
