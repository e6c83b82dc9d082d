import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerAppRequest, appSchemePrivileges } from '../../electron/appProtocol.ts';
import { contentSecurityPolicy } from '../../electron/contentSecurityPolicy.ts';
import { appPage } from '../../electron/navigationPolicy.ts';
import { hostilePaths } from '../support/hostilePaths.ts';
import { makePageFolder, secret } from '../support/pageFolder.ts';

let page: ReturnType<typeof makePageFolder>;
beforeAll(() => {
  page = makePageFolder();
});
afterAll(() => page.remove());

const ask = (url: string, method = 'GET') => answerAppRequest({ url, method }, page.folder);

describe('answerAppRequest', () => {
  it('serves the page under its policy', async () => {
    const response = await ask(appPage);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-security-policy')).toBe(contentSecurityPolicy);
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(await response.text()).toContain('<title>page</title>');
  });

  it.each(hostilePaths)('gives nothing away for app://lightoff%s', async (path) => {
    const response = await ask(`app://lightoff${path}`);
    expect(response.status).toBeGreaterThanOrEqual(400);
    expect(await response.text()).not.toContain(secret);
  });

  it.each([
    ['app://lightoff/index.html', 'POST'],
    ['app://elsewhere/index.html', 'GET'],
    ['app://lightoff.elsewhere/index.html', 'GET'],
    ['https://lightoff/index.html', 'GET'],
    ['app://who:pw@lightoff/index.html', 'GET'],
    ['nonsense', 'GET'],
  ])('refuses %s by %s', async (url, method) => {
    expect((await ask(url, method)).status).toBe(403);
  });

  it('asks for no more than a plain secure scheme', () => {
    expect(appSchemePrivileges.privileges).toEqual({ standard: true, secure: true, supportFetchAPI: true });
  });
});

describe('contentSecurityPolicy', () => {
  const rules = new Map(
    contentSecurityPolicy.split('; ').map((rule) => [rule.split(' ')[0], rule.split(' ').slice(1)]),
  );

  it('allows nothing that is not named', () => {
    expect(rules.get('default-src')).toEqual(["'none'"]);
    for (const name of ['base-uri', 'form-action', 'frame-ancestors']) expect(rules.get(name)).toEqual(["'none'"]);
  });

  it('runs and fetches from the app alone', () => {
    expect(rules.get('script-src')).toEqual(["'self'"]);
    expect(rules.get('connect-src')).toEqual(["'self'"]);
    expect(contentSecurityPolicy).not.toMatch(/unsafe-eval|http:|https:|data:|\*/);
  });
});
