/** @jsxImportSource preact */
import { renderToString } from 'preact-render-to-string';
import type { PageView } from '../page-view.ts';
import { PAGE_STYLE } from './page-style.ts';
import { Body, KeptFigure, LiftCard, Muscles, Waist } from './pictures.tsx';

/**
 * One self-contained HTML page: no script, nothing from the network (its own policy forbids it),
 * light and dark by the reader's setting, readable on a phone.
 */
export function pageHtml(view: PageView): string {
  return `<!doctype html>\n${renderToString(<Page view={view} />)}\n`;
}

function Page({ view }: { readonly view: PageView }) {
  const { unit, body, waist, kept, lifts, muscles } = view;
  return (
    <html lang='en'>
      <head>
        <meta charset='utf-8' />
        <meta
          http-equiv='Content-Security-Policy'
          content="default-src 'none'; style-src 'unsafe-inline'"
        />
        <meta name='viewport' content='width=device-width, initial-scale=1' />
        <meta name='color-scheme' content='light dark' />
        <title>{`${view.program}: ${view.made}`}</title>
        <style>{PAGE_STYLE}</style>
      </head>
      <body>
        <header>
          <p>
            {view.program} · {view.made}
          </p>
          <h1>Strength and body weight</h1>
        </header>
        <main>
          <p class='verdict'>{view.headline}</p>
          {view.findings.length > 0 ? (
            <ul class='findings'>
              {view.findings.map(({ text, source }) => (
                <li key={text}>
                  {text}
                  <small>{source}</small>
                </li>
              ))}
            </ul>
          ) : null}
          <dl>
            {view.figures.map(({ name, value, about }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <b>{value}</b>
                  {about}
                </dd>
              </div>
            ))}
          </dl>
          {body || waist || kept ? (
            <section>
              <h2>The cut</h2>
              <div class='pair'>
                {body ? <Body of={body} unit={unit} /> : null}
                {waist ? <Waist of={waist} /> : null}
                {kept ? <KeptFigure of={kept} /> : null}
              </div>
            </section>
          ) : null}
          {view.noBody ? <p class='about'>{view.noBody}</p> : null}
          {lifts.length > 0 ? (
            <section>
              <h2>Strength of each lift</h2>
              <p class='about'>
                Estimated one-repetition maximum in {unit}, share of body weight included.
              </p>
              <div class='pictures'>
                {lifts.map((each) => (
                  <LiftCard key={each.name} of={each} unit={unit} />
                ))}
              </div>
            </section>
          ) : null}
          {muscles ? (
            <section>
              <h2>Hard sets a week</h2>
              <p class='about'>
                Shaded: {muscles.band[0]} to {muscles.band[1]} sets, the aim while cutting. A set
                counts whole for the muscles it trains directly and half for the others.
              </p>
              <Muscles of={muscles} />
            </section>
          ) : null}
        </main>
        <footer>
          <p>{view.caution}</p>
        </footer>
      </body>
    </html>
  );
}
