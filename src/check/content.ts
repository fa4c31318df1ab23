import { nearestName } from '../terms/names.ts';
import { fileOnly } from '../terms/place.ts';
import type { ProblemLog } from '../terms/problem.ts';
import { decodeText } from '../read/decode.ts';
import type { SourceFile } from '../read/decode.ts';

/** The grower's words by the page they belong to: `index`, `seasons/2026`, `varieties/<id>`. */
export type Content = ReadonlyMap<string, string>;

/** Pages that may have words of the grower's own. */
export function contentPages(years: readonly number[], varieties: readonly string[]): readonly string[] {
  return ['index', ...years.map((year) => `seasons/${year}`), ...varieties.map((id) => `varieties/${id}`)];
}

/**
 * Reads the Markdown files of `content/`; a file that belongs to no page is reported.
 *
 * @param sources  the files, paths from the trial folder
 * @param pages    pages that may have words
 */
export function checkContent(sources: readonly SourceFile[], pages: readonly string[], log: ProblemLog): Content {
  const content = new Map<string, string>();
  for (const { path, bytes } of sources) {
    const page = path.replace(/^content\//, '').replace(/\.md$/, '');
    if (!pages.includes(page)) {
      const near = nearestName(page, pages);
      log.add('content-unused', fileOnly(path), page, near === null ? {} : { near: `content/${near}.md` });
      continue;
    }
    const decoded = decodeText(bytes);
    if (decoded.kind === 'text') content.set(page, decoded.text);
    else
      log.add(
        'content-unreadable',
        decoded.kind === 'not-utf8' ? { file: path, line: decoded.line, column: 1 } : fileOnly(path),
      );
  }
  return content;
}
