import { createServer } from 'node:http';
import type { Server, ServerResponse } from 'node:http';
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { extname, join, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.xml': 'application/xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.cff': 'text/plain; charset=utf-8',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
};
const SAFE = { 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' };
const RELOAD = `const changes = new EventSource('/__keeprow/changes');
changes.onmessage = () => location.reload();
changes.addEventListener('working', () => {
  if (document.getElementById('keeprow-working')) return;
  const sign = document.createElement('p');
  sign.id = 'keeprow-working';
  sign.setAttribute('role', 'status');
  sign.textContent = 'A change was seen: the page is being made anew …';
  document.body.prepend(sign);
});`;

export interface Preview {
  readonly server: Server;
  /** Tells every open page to load again. */
  readonly reload: () => void;
  /** Tells every open page that a new one is on its way. */
  readonly announce: () => void;
}

/** Path of a request, `/` first; null where it is none. */
export function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    return path.includes('\0') ? null : path;
  } catch {
    return null;
  }
}

/** A file of the site, or null for anything outside it. */
function fileOf(site: string, url: string): string | null {
  const path = pathOf(url);
  if (path === null) return null;
  try {
    const asked = join(site, path);
    const file = realpathSync(statSync(asked).isDirectory() ? join(asked, 'index.html') : asked);
    return file.startsWith(realpathSync(site) + sep) && statSync(file).isFile() ? file : null;
  } catch {
    return null;
  }
}

/** The page with the script that loads it again, and with what the checks found where that is an error. */
function forPreview(html: string, banner: string): string {
  return html
    .replace("script-src 'self'", "script-src 'self'; connect-src 'self'")
    .replace('</head>', '<script src="/__keeprow/reload.js" defer></script></head>')
    .replace(/<body[^>]*>/, (body) => body + banner);
}

/** What stands at an address: its bytes with the name that says what they are; null where nothing does. */
export type Finder = (url: string) => { readonly name: string; readonly bytes: string | Uint8Array } | null;

/** Finds the files of a folder; nothing outside it is found. */
export const filesIn =
  (site: string): Finder =>
  (url) => {
    const file = fileOf(site, url);
    return file === null ? null : { name: file, bytes: readFileSync(file) };
  };

/**
 * Serves a site for one person at this machine.
 *
 * @param find    gives what stands at an address
 * @param banner  HTML to stand on top of every page, empty where all is well
 */
export function serveSite(find: Finder, banner: () => string): Preview {
  const open = new Set<ServerResponse>();
  const server = createServer((request, response) => {
    const host = (request.headers.host ?? '').replace(/:\d+$/, '');
    if (host !== 'localhost' && host !== '127.0.0.1' && host !== '[::1]') {
      response.writeHead(403).end('only for this machine');
      return;
    }
    if (request.url === '/__keeprow/reload.js') {
      response.writeHead(200, { ...SAFE, 'content-type': TYPES['.js'] }).end(RELOAD);
      return;
    }
    if (request.url === '/__keeprow/changes') {
      response.writeHead(200, { ...SAFE, 'content-type': 'text/event-stream' }).write(':\n\n');
      open.add(response);
      response.on('close', () => open.delete(response));
      return;
    }
    const found = find(request.url ?? '/');
    if (found === null) {
      const page = `<!doctype html><html lang="en"><head><title>Not here</title></head><body><p>No such page.</p></body></html>`;
      response.writeHead(404, { ...SAFE, 'content-type': TYPES['.html'] }).end(forPreview(page, banner()));
      return;
    }
    const kind = extname(found.name);
    response.writeHead(200, { ...SAFE, 'content-type': TYPES[kind] ?? 'application/octet-stream' });
    response.end(kind === '.html' ? forPreview(String(found.bytes), banner()) : found.bytes);
  });
  const reload = (): void => {
    for (const response of open) response.write('data: changed\n\n');
  };
  const announce = (): void => {
    for (const response of open) response.write('event: working\ndata: working\n\n');
  };
  return { server, reload, announce };
}
