/** @jsxImportSource preact */
import type { NumbersTable } from '../page-view.ts';

/** The numbers of a picture, folded away until they are asked for. */
export function Numbers({ of, about }: { readonly of: NumbersTable; readonly about: string }) {
  const [first, ...others] = of.headings;
  return (
    <details>
      <summary>Numbers: {about}</summary>
      <section class='scroll' tabindex={0} aria-label={about}>
        <table>
          <caption>{about}</caption>
          <thead>
            <tr>
              <th scope='col'>{first}</th>
              {others.map((heading) => (
                <th key={heading} scope='col'>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {of.rows.map(([name, ...cells]) => (
              <tr key={[name, ...cells].join('|')}>
                <th scope='row'>{name}</th>
                {cells.map((cell, at) => (
                  <td key={of.headings[at + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
