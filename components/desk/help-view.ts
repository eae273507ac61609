import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/model/index.js';
import type { Desk } from './desk-parts.js';
import { placeText } from './views.js';

/** What the page is for, where things are, and the keys: inside the page, since it works without a network. */
export function helpView({ gallery }: Desk): TemplateResult {
  return html`<div class="help">
    <h2>What this page does</h2>
    <p>
      It tells which work fits which track possession or blockade, with what float, what margin is
      left at handback, and what an overrun would cost. Everything is worked out on this machine;
      nothing is sent anywhere.
    </p>
    <h2>Begin with your own</h2>
    <ol>
      <li>Open the plan’s name at the top and choose “A new plan”, or keep the one shown.</li>
      <li>
        Under “${placeText.data}”, “Bring files in”: drop the windows and the work, as CSV, a
        workbook or pasted cells. What could not be read is marked in its cell with how to mend it.
      </li>
      <li>
        Under “Rules”, say what is deducted from every window: protection, isolation, testing, the
        handback margin. Without rules nothing is deducted.
      </li>
      <li>
        The plan is then made by itself. The answer stands on top of “${placeText.programme}”.
      </li>
    </ol>
    <h2>Where things are</h2>
    <dl>
      <dt>${placeText.programme}</dt>
      <dd>
        The windows week by week with the work in them, as a table, what fits where, each piece of
        work, key dates and their float.
      </dd>
      <dt>${placeText.handback}</dt>
      <dd>
        Margin and chance of handing back on time, cut-off times, the shift as it goes, the sheet
        for the night.
      </dd>
      <dt>${placeText.cost}</dt>
      <dd>An overrun by the minute, options side by side, the account after the event.</dd>
      <dt>${placeText.checks}</dt>
      <dd>
        What to see to, by date: faults, booking dates, people’s hours, noise, wind and curing.
      </dd>
      <dt>${placeText.data}</dt>
      <dd>Every table as typed, the rules, and bringing files in.</dd>
    </dl>
    <h2>Keys</h2>
    <dl class="keys">
      <dt><kbd>←</kbd> <kbd>→</kbd></dt>
      <dd>from place to place, on the row of places</dd>
      <dt><kbd>Ctrl</kbd>+<kbd>Z</kbd>, <kbd>Ctrl</kbd>+<kbd>Y</kbd></dt>
      <dd>undo and redo any change of the plan</dd>
      <dt><kbd>/</kbd></dt>
      <dd>
        find a view, window, package or piece of work; “D1 W2” and Enter move D1 to W2 and plan
        again
      </dd>
      <dt><kbd>Esc</kbd></dt>
      <dd>close what is open</dd>
    </dl>
    <p>A table has keys of its own: its button “Keys” lists them.</p>
    ${
      gallery === ''
        ? nothing
        : html`<h2>In your own page</h2>
            <p>
              Each part of this desk is an element that any page can use:
              <a href=${gallery}>all of them, live, with code to copy</a>.
            </p>`
    }
    <h2>Words</h2>
    <dl>
      <dt>Usable</dt>
      <dd>What is left of a window for work once all deductions and the margin are taken.</dd>
      <dt>Handback margin</dt>
      <dd>Booked end less the planned time of handback.</dd>
      <dt>Programme float</dt>
      <dd>How far a package’s finish can slip before a key date is missed.</dd>
      <dt>Key date</dt>
      <dd>A moment by which a package has to be finished. A date alone means its end.</dd>
    </dl>
    <h2>Cautions</h2>
    <ul>
      ${cautions.map((one) => html`<li>${one}</li>`)}
    </ul>
  </div>`;
}
