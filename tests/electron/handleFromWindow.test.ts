import { ipcMain } from 'electron';
import { describe, expect, it } from 'vitest';
import { handleFromWindow, isFromOwnMainFrame, type SentBy } from '../../electron/handleFromWindow.ts';
import { FrameDouble, state, WebContentsDouble } from '../support/electronDouble.ts';

const ownPage = 'app://lightoff/index.html';

function eventFrom(url: string, frame?: (sender: WebContentsDouble) => FrameDouble | null): SentBy {
  const sender = new WebContentsDouble();
  sender.mainFrame.url = url;
  const senderFrame = frame === undefined ? sender.mainFrame : frame(sender);
  return { sender, senderFrame };
}

describe('isFromOwnMainFrame', () => {
  it('knows the page’s own frame', () => {
    expect(isFromOwnMainFrame(eventFrom(ownPage))).toBe(true);
  });

  it.each([
    ['a page from elsewhere', eventFrom('https://example.com/')],
    ['a look-alike', eventFrom('app://lightoff.example/index.html')],
    ['a frame within the page', eventFrom(ownPage, (sender) => new FrameDouble(ownPage, sender.mainFrame))],
    ['another window’s frame', eventFrom(ownPage, () => new FrameDouble(ownPage, null))],
    ['a frame that is gone', eventFrom(ownPage, () => null)],
  ])('refuses %s', (_who, event) => {
    expect(isFromOwnMainFrame(event)).toBe(false);
  });
});

describe('handleFromWindow', () => {
  const faults: unknown[] = [];
  const asked: number[] = [];
  handleFromWindow<number>(
    ipcMain,
    {
      channel: 'test:double',
      parse: ([first]) => (typeof first === 'number' ? first : null),
      handle: (input) => {
        if (input === 13) throw new Error('unlucky');
        asked.push(input);
        return true;
      },
    },
    (error) => {
      faults.push(error);
      return 'ref';
    },
  );
  const invoke = (event: SentBy, ...args: unknown[]) => state.invokable.get('test:double')?.(event, ...args);

  it('hands on what was parsed', () => {
    expect(invoke(eventFrom(ownPage), 7)).toBe(true);
    expect(asked).toEqual([7]);
  });

  it('refuses a stranger and what can’t be parsed', () => {
    expect(invoke(eventFrom('https://example.com/'), 8)).toBe(false);
    expect(invoke(eventFrom(ownPage), 'eight')).toBe(false);
    expect(asked).toEqual([7]);
  });

  it('keeps an exception to itself', () => {
    expect(invoke(eventFrom(ownPage), 13)).toBe(false);
    expect(faults).toHaveLength(1);
  });
});
