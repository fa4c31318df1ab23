import type { Page, SiteContent } from '../content.ts';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

export function dataPage(content: SiteContent): Page {
  const { licence } = content.trial.settings.publish;
  return page(content, 'data/', 'Data', (root) => (
    <>
      <p>
        Every figure of this site stands in <a href={`${root}results.json`}>results.json</a> with full precision, in
        grams, centimetres, millimetres and days. Licence of the data: {licence}.
      </p>
      {content.downloads.map(({ path, title, columns, rows }) => (
        <section>
          <h2>{title}</h2>
          <p>
            <a href={`${root}${path}`}>{path}</a>, {rows.length} rows, CSV in UTF-8. An empty cell is a figure that is
            not known.
          </p>
          <Table
            caption={`Columns of ${path}`}
            head={['Column', 'Meaning']}
            rows={columns.map(([name, meaning]) => [<code>{name}</code>, meaning])}
          />
        </section>
      ))}
    </>
  ));
}
