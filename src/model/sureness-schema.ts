import * as z from 'zod/mini';
import { surenesses } from './sourced.js';

z.config({ jitless: true });

export const surenessSchema = z.enum(surenesses);
