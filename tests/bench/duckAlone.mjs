/** The yardstick of totals: the statement by DuckDB alone, its rows taken out. Arguments: table function, file, file … */
import { DuckDBInstance } from '@duckdb/node-api';

const [, , read, ...files] = process.argv;
const connection = await (await DuckDBInstance.create(':memory:', { memory_limit: '400MB' })).connect();
const list = files.map((file) => `'${file}'`).join(', ');
await connection.run(`CREATE VIEW harvests AS SELECT * FROM ${read}([${list}])`);
const result = await connection.runAndReadAll(
  `SELECT region, garden, season, planting, COUNT(*), SUM(fruits), SUM(weight_mg), MIN(CASE WHEN fruits > 0 OR weight_mg > 0 THEN date END) FROM harvests GROUP BY region, garden, season, planting ORDER BY region, garden, season, planting`,
);
if (result.getRows().length === 0) throw new Error('no rows');
