import { EngineFault, inOrder, TOTALS } from './statement.ts';
import type { Engine, TotalRow } from './statement.ts';

type Module = typeof import('@duckdb/node-api');

/** The optional package; null where it is not installed. */
export async function findDuckDb(): Promise<Module | null> {
  try {
    return await import('@duckdb/node-api');
  } catch {
    return null;
  }
}

/** The statement's rows as text, written by the engine: cheaper than values of its own kinds for every cell. */
const AS_TEXT = `SELECT region, garden, CAST(season AS VARCHAR), planting, CAST(rows_read AS VARCHAR), CAST(all_fruits AS VARCHAR), CAST(all_mg AS VARCHAR), CAST(first_day AS VARCHAR) FROM (${TOTALS})`;

const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;

/** Types whose values are whole numbers that a sum of very many holds. */
const WHOLE = /^U?(?:TINYINT|SMALLINT|INTEGER|BIGINT)$/;

/**
 * Columns as the statement wants them, of the columns that there are.
 *
 * @param names  types of the columns by their names
 */
function viewOf(source: string, names: ReadonlyMap<string, string>): string {
  for (const name of ['garden', 'season', 'planting', 'date'])
    if (!names.has(name)) throw new EngineFault(`the table has no column ${name}`);
  const exact = (name: string, unit: number): string => {
    const value = `CAST(${name} AS DOUBLE) * ${unit}`;
    const fault = `error('${name} ' || ${name} || ' is no number that can be added up exactly')`;
    if (WHOLE.test(names.get(name) ?? ''))
      return `CASE WHEN ${name} >= 0 OR ${name} IS NULL THEN CAST(${name} AS BIGINT) * ${unit} ELSE ${fault} END`;
    return `CASE WHEN ${name} IS NULL THEN NULL WHEN abs(${value} - round(${value})) < 1e-6 AND ${value} >= 0 THEN CAST(round(${value}) AS BIGINT) ELSE ${fault} END`;
  };
  const weight = names.has('weight_mg')
    ? exact('weight_mg', 1)
    : names.has('weight_g')
      ? exact('weight_g', 1000)
      : 'CAST(NULL AS BIGINT)';
  const region = names.has('region') ? `coalesce(CAST(region AS VARCHAR), '')` : `''`;
  const fruits = names.has('fruits') ? exact('fruits', 1) : 'CAST(NULL AS BIGINT)';
  return `CREATE VIEW harvests AS SELECT ${region} AS region, CAST(garden AS VARCHAR) AS garden, CAST(season AS INTEGER) AS season, CAST(planting AS VARCHAR) AS planting, CAST(date AS DATE) AS date, ${fruits} AS fruits, ${weight} AS weight_mg FROM ${source}`;
}

/**
 * DuckDB: Parquet, and large tidy tables.
 *
 * @param files  of one kind, CSV or Parquet
 */
export function duckDb(module: Module, files: readonly string[]): Engine {
  return {
    name: 'DuckDB',
    async totals() {
      const instance = await module.DuckDBInstance.create(':memory:', { memory_limit: '300MB' });
      const connection = await instance.connect();
      try {
        const list = `[${files.map(quoted).join(', ')}]`;
        const isParquet = files.every((file) => /\.parquet$/i.test(file));
        const read = (types: string): string =>
          isParquet ? `read_parquet(${list})` : `read_csv(${list}, header = true${types})`;
        const described = await connection.runAndReadAll(`DESCRIBE SELECT * FROM ${read('')}`);
        const names = new Map(
          described.getRows().map(([name, type]) => [String(name).toLowerCase(), String(type).toUpperCase()]),
        );
        // Codes such as 007 are no numbers, and 03/08 is no day that one may guess.
        const codes = ['region', 'garden', 'planting'].filter((name) => names.has(name));
        const types = `, dateformat = '%Y-%m-%d', types = {${[...codes.map((name) => `${quoted(name)}: 'VARCHAR'`), "'date': 'DATE'"].join(', ')}}`;
        await connection.run(viewOf(read(types), names));
        const result = await connection.stream(AS_TEXT);
        const rows: TotalRow[] = [];
        for await (const some of result.yieldRows())
          for (const row of some) rows.push(row.map((cell) => (cell === null ? '' : (cell as string))));
        return inOrder(rows);
      } catch (fault) {
        if (fault instanceof EngineFault) throw fault;
        throw new EngineFault(
          `DuckDB: ${fault instanceof Error ? (fault.message.split('\n')[0] ?? '') : String(fault)}`,
        );
      } finally {
        connection.closeSync();
        instance.closeSync();
      }
    },
  };
}
