import { PlanStore } from '../../../components/store/index.js';

(globalThis as unknown as { kept: typeof PlanStore }).kept = PlanStore;
