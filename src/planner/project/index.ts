export { project, type ProjectProblem } from './shortest.js';
