// All that the panel can say, loaded once there are figures to ask about.
export { explainCertificate, explainPlacement } from '../../why/explain-plan.js';
export { explainFigure } from '../../why/explain-figure.js';
export {
  tellFaults,
  tellFit,
  tellLedger,
  tellLeftOver,
  tellMoves,
  tellPackage,
  tellShortNotice,
  tellWindowWork,
} from './explain-picked.js';
