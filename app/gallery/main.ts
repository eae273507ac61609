import '../trusted-types.js';
import '../../components/all.js';
import { html, render } from 'lit';
import { cautions } from '../../src/model/index.js';
import { wordsOf } from '../../components/shared/words-of.js';
import { readManifest, type Gallery } from './manifest.js';
import { section } from './section.js';
import { tokenForm } from './token-form.js';

// Every element as its manifest tells of it, alive in its states, one sheet under the other.
readManifest().then(
  (gallery) => render(page(gallery), document.body),
  (error: unknown) => render(html`<main><p>${wordsOf(error)}</p></main>`, document.body),
);

const page = ({ elements, tokens }: Gallery) => html`
  <header>
    <h1>The elements of possession-fit</h1>
    <p>
      Each stands here alive, over the sample plan of an invented line. What a person does in one is
      told below it. <a href="./index.html">To the desk</a>
    </p>
    <ul class="cautions" aria-label="Cautions">
      ${cautions.map((caution) => html`<li>${caution}</li>`)}
    </ul>
    <nav aria-label="Elements">
      <ul>
        ${elements.map(({ tag }) => html`<li><a href="#${tag}">${tag}</a></li>`)}
      </ul>
    </nav>
  </header>
  <main>
    ${tokenForm(tokens)}
    <section class="words">
      <h2>In all code below</h2>
      <p>
        An element inside <code>&lt;possession-document&gt;</code> takes its data from there. Others
        are given it: <code>engine</code> is <code>createWorkerEngine()</code> of
        <code>possession-fit</code>, <code>planDocument</code> the plan that its
        <code>importFiles</code> made of the files, <code>results</code> what
        <code>recompute</code> and <code>plan</code> what <code>allocate</code> answered for it,
        <code>accessWindow</code> one of <code>results.plan.windows</code>,
        <code>limitSets</code> limits on hours.
      </p>
    </section>
    ${elements.map(section)}
  </main>
`;
