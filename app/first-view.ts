import '../components/ledger/define.js';
import '../components/ribbon/define.js';
import { PossessionDesk } from '../components/desk/desk.js';
import { wordsOf } from '../components/shared/words-of.js';

// The desk and what its first view draws. The other elements follow once that is on the screen, and take on the
// properties they were given before.
if (!customElements.get('possession-desk'))
  customElements.define('possession-desk', PossessionDesk);

requestAnimationFrame(() =>
  setTimeout(() => {
    import('../components/desk/define.js').catch((error: unknown) =>
      document
        .querySelector('possession-desk')
        ?.complain((words) => words.cannotLoadParts(wordsOf(error))),
    );
    // Nobody then waits for the menu either. Where it cannot be loaded, that is told when it is opened.
    import('../components/desk/views/menu-view.js').catch(() => undefined);
  }),
);
