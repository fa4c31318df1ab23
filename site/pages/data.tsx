import { addresses } from '../../src/terms/addresses.ts';
import { datasetJson } from '../../src/present/publication/descriptions.ts';
import type { Page, DataContent } from '../content.ts';
import { page } from '../page.tsx';
import { Table } from '../parts.tsx';

export function dataPage(content: DataContent): Page {
  const { licence } = content.trial.settings.publish;
  const { data: say } = content.writing.words;
  const years = content.seasons.map(({ season }) => season.year);
  return page(content, addresses.data, say.title, (root) => (
    <>
      <p>
        {say.intro} <a href={`${root}results.json`}>results.json</a>. {say.licence(licence)}
      </p>
      {content.downloads.map(({ path, title, columns, rows }) => (
        <section>
          <h2>{title}</h2>
          <p>
            <a href={`${root}${path}`}>{path}</a>, {say.rows(content.writing.number(rows.length))}
          </p>
          <Table
            caption={say.columns(path)}
            head={[say.column, say.meaning]}
            rows={columns.map(([name, meaning]) => [<code>{name}</code>, meaning])}
          />
        </section>
      ))}
      <h2>{say.more}</h2>
      <ul class="plain">
        {[
          ['results.schema.json', 'JSON Schema'],
          ['datapackage.json', 'Data Package, Table Schema'],
          ['csv-metadata.json', 'CSV on the Web'],
          ['CITATION.cff', say.cite],
        ].map(([path, what]) => (
          <li>
            <a href={`${root}${path}`}>{path}</a>: {what}
          </li>
        ))}
      </ul>
      <script
        type="application/ld+json"
        // JSON of our own, every < written as an escape, so that no text can end the element.
        dangerouslySetInnerHTML={{
          __html: datasetJson(content.trial.settings, content.downloads, years).replaceAll('<', '\\u003c'),
        }}
      />
    </>
  ));
}
