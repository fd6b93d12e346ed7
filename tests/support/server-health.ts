import type { Health } from '../../server/http/create-app.ts';
import { API } from '../../shared/messages/http.ts';

/** Asks a server for its health. */
export async function healthOf(server: {
  readonly url: string;
}): Promise<{ status: number; health: Health }> {
  const response = await fetch(`${server.url}${API.health}`);
  return { status: response.status, health: (await response.json()) as Health };
}
