// What a window that is cut or copied leaves of sections with times of their own; loaded when a form of windows is drawn.
export { isolationCut, isolationLike, type CutIsolation } from '../tables/kinds/cut-isolation.js';
