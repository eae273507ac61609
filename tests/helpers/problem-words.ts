import { englishProblems } from '../../src/engine/english/problems.js';
import { wordsOf, type Problem } from '../../src/model/index.js';

/** What is wrong, in English. */
export const messageOf = (problem: Problem): string => wordsOf(problem, englishProblems)[0];

/** How to mend it, in English. */
export const mendOf = (problem: Problem): string => wordsOf(problem, englishProblems)[1];
