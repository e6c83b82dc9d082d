import { describe, expect, it } from 'vitest';
import { appPage, isOwnPage, parseExternalAddress } from '../../electron/navigationPolicy.ts';

const foreignPages = [
  'https://example.com/',
  'http://127.0.0.1:8080/',
  'http://localhost/',
  'file:///etc/passwd',
  'file://lightoff/index.html',
  'about:blank',
  'about:srcdoc',
  'data:text/html,<script>1</script>',
  'javascript:alert(1)',
  'blob:app://lightoff/0f6e',
  'view-source:app://lightoff/index.html',
  'app://lightoff.example/index.html',
  'app://lightoff.example.com/',
  'app://lightoff-example/',
  'app://xlightoff/',
  'app://example/lightoff',
  'app://example/app://lightoff/index.html',
  'app://lightoff@example/',
  'app://lightoff:pw@example/',
  'app://someone@lightoff/',
  'app://lightoff:8080/',
  'app:lightoff/index.html',
  'app:///lightoff/index.html',
  'apps://lightoff/index.html',
  'app2://lightoff/',
  'https://app/lightoff',
  'chrome://settings',
  'devtools://devtools/bundled/inspector.html',
  'app://lіghtoff/', // a Cyrillic letter
  'app://lightoff%2eexample/',
  '//lightoff/index.html',
  'lightoff',
  '',
];

describe('isOwnPage', () => {
  it('has at least twenty-five foreign pages to refuse', () => {
    expect(new Set(foreignPages).size).toBeGreaterThanOrEqual(25);
  });

  it.each(foreignPages)('is false for %j', (address) => {
    expect(isOwnPage(address)).toBe(false);
  });

  it.each([appPage, 'app://lightoff/', 'app://lightoff/index.html#/visits', 'APP://lightoff/x?y'])(
    'is true for %s',
    (address) => {
      expect(isOwnPage(address)).toBe(true);
    },
  );
});

const badOutside = [
  'file:///etc/passwd',
  'file://server/share/tool.exe',
  'FILE:///C:/windows/system32/calc.exe',
  'smb://server/share',
  'nfs://server/share',
  'ftp://example.com/x',
  'sftp://example.com/x',
  'ssh://example.com',
  'telnet://example.com',
  '\\\\server\\share\\tool.exe',
  '//server/share/tool.exe',
  'C:\\windows\\system32\\calc.exe',
  'C:/windows/system32/calc.exe',
  '/usr/bin/true',
  './tool.sh',
  'javascript:alert(1)',
  'JavaScript:alert(1)',
  ' javascript:alert(1)',
  'java\nscript:alert(1)',
  'vbscript:msgbox(1)',
  'data:text/html,<script>1</script>',
  'blob:https://example.com/1',
  'about:blank',
  'chrome://settings',
  'view-source:https://example.com/',
  'ms-settings:privacy',
  'ms-msdt:/id PCWDiagnostic',
  'search-ms:query=x',
  'shell:startup',
  'steam://run/1',
  'vscode://file/etc/passwd',
  'x-apple.systempreferences:',
  'intent://x#Intent;scheme=https;end',
  'app://lightoff/index.html',
  'http://example.com/',
  'https:example.com',
  'https:/example.com',
  'https:///example.com',
  'https://user:pw@example.com/',
  'https://example.com/\u0000',
  'https://example.com/ --flag',
  'https://example.com/"&calc',
  'https://example.com\\@other.example/',
  `https://example.com/${'x'.repeat(2_000)}`,
  'mailto:',
  'mailto:nobody',
  'mailto:a@example.com\r\nBcc:b@example.com',
  'mailto:"a b"@example.com',
  'tel:',
  'tel:call-me',
  'tel:*21*5551234#',
  'tel:+1555?x=y',
  '',
  'https://',
];

describe('parseExternalAddress', () => {
  it('has at least forty bad addresses to refuse', () => {
    expect(new Set(badOutside).size).toBeGreaterThanOrEqual(40);
  });

  it.each(badOutside)('refuses %j', (address) => {
    expect(parseExternalAddress(address)).toBeNull();
  });

  it.each([
    'https://example.com/',
    'https://example.com/path?q=a%20b#top',
    'https://example.com:8443/',
    'mailto:office@example.com',
    'mailto:office@example.com?subject=Startup%20of%20a%20boiler',
    'tel:+15550100',
    'tel:555-0100',
  ])('lets %s pass', (address) => {
    expect(parseExternalAddress(address)).toBe(address);
  });
});
