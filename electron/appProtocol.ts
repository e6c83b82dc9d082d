/** Serves the window's page from one fixed folder under a scheme of our own, so that no page ever comes from file:. */
import { pageHeaders } from './contentSecurityPolicy.ts';
import { appScheme, isOwnPage } from './navigationPolicy.ts';
import { readPageFile } from './pageFile.ts';

/** To be registered before the runtime is ready. */
export const appSchemePrivileges = {
  scheme: appScheme,
  privileges: { standard: true, secure: true, supportFetchAPI: true },
} as const;

export async function answerAppRequest(
  request: { readonly url: string; readonly method: string },
  rendererFolder: string,
): Promise<Response> {
  if (!isOwnPage(request.url) || request.method !== 'GET') return refuse(403);
  const file = await readPageFile(rendererFolder, new URL(request.url).pathname);
  if (file === null) return refuse(404);
  return new Response(file.bytes, { headers: { ...pageHeaders, 'content-type': file.mediaType } });
}

function refuse(status: number): Response {
  return new Response(null, { status, headers: pageHeaders });
}
