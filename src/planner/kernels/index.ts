export { balance, type BalanceAnswer, type BalanceProblem } from './balance.js';
export { project, type ProjectAnswer, type ProjectProblem } from './project.js';
