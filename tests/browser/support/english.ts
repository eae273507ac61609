// English words of the core are loaded when first shown; a test that looks at them does not wait for a busy machine.
import { loadProblems } from '../../../components/shared/problem-words.js';
import { loadSentences } from '../../../components/shared/said.js';

await Promise.all([loadProblems('en'), loadSentences('en')]);
