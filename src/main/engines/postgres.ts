import { EngineFault, inOrder, TOTALS } from './statement.ts';
import type { CustomTypesConfig } from 'pg';
import type { Engine } from './statement.ts';

type Module = typeof import('pg');

/** The optional package; null where it is not installed. */
export async function findPostgres(): Promise<Module['default'] | null> {
  try {
    return (await import('pg')).default;
  } catch {
    return null;
  }
}

/** Every value as the text that the server sent: a sum is no double, a day no moment. */
const asText: CustomTypesConfig = { getTypeParser: () => (text: string) => text };

/**
 * PostgreSQL: a table `harvests`, or one whose partitions are other regions' own tables.
 *
 * @param url  postgres://user@host:port/database
 */
export function postgres(pg: Module['default'], url: string): Engine {
  return {
    name: 'PostgreSQL',
    async totals() {
      const client = new pg.Client({ connectionString: url, types: asText });
      // A server that goes away is told by the query that waits for it.
      client.on('error', () => {});
      try {
        await client.connect();
        // Else every row of every region would travel.
        await client.query('SET enable_partitionwise_aggregate = on');
        const { rows } = await client.query<(string | null)[]>({ text: TOTALS, rowMode: 'array' });
        return inOrder(rows.map((row) => row.map((cell) => cell ?? '')));
      } catch (fault) {
        if (fault instanceof EngineFault) throw fault;
        const server = /could not connect to server "([^"]+)"/.exec(String(fault))?.[1];
        if (server !== undefined) throw new EngineFault(`region-silent: ${server} did not answer: nothing was written`);
        throw new EngineFault(`PostgreSQL: ${fault instanceof Error ? fault.message : String(fault)}`);
      } finally {
        await client.end().catch(() => {});
      }
    },
  };
}
