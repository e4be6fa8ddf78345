import { expect, rough as test } from './runtime/journey.ts';

test.beforeEach(async ({ app }) => {
  await expect(app.page.getByLabel('Name of the shop')).toBeVisible();
});

test('no script but our own files runs in the page', async ({ app }) => {
  const ran = await app.page.evaluate(async () => {
    const world = window as unknown as Record<string, unknown>;
    const inline = document.createElement('script');
    inline.textContent = 'window.inlineRan = true';
    document.body.append(inline);
    const onError = document.createElement('div');
    onError.innerHTML = '<img src="data:," onerror="window.attributeRan = true">';
    document.body.append(onError);
    const fromData = document.createElement('script');
    fromData.src = 'data:text/javascript,window.dataRan=true';
    document.body.append(fromData);
    // In a task of its own: the test's tool may evaluate, the page may not.
    let evaluated = true;
    setTimeout(() => {
      try {
        new Function('return 1')();
      } catch {
        evaluated = false;
      }
    });
    await new Promise((done) => setTimeout(done, 300));
    return { inline: world.inlineRan, attribute: world.attributeRan, data: world.dataRan, evaluated };
  });
  expect(ran).toEqual({ inline: undefined, attribute: undefined, data: undefined, evaluated: false });
  expect(app.complaints.filter((said) => said.includes('Content Security Policy')).length).toBeGreaterThan(0);
});

test('nothing is fetched from elsewhere, not even from another port of this computer', async ({ app }) => {
  const reached = await app.page.evaluate(async () => {
    const tries = ['https://shop.example/', 'http://127.0.0.1:9/', 'file:///etc/hostname'];
    return Promise.all(
      tries.map((address) =>
        fetch(address, { mode: 'no-cors' }).then(
          () => address,
          () => 'refused',
        ),
      ),
    );
  });
  expect(reached).toEqual(['refused', 'refused', 'refused']);
  // Refused by our policy, not merely unreachable.
  expect(app.complaints.filter((said) => said.includes('connect-src')).length).toBeGreaterThanOrEqual(3);
});

test('no zod runs in the page', async ({ app }) => {
  const scripts = await app.page.evaluate(async () => {
    const sources = [...document.scripts].map(({ src }) => src).filter((src) => src !== '');
    return (await Promise.all(sources.map((src) => fetch(src).then((answer) => answer.text())))).join('\n');
  });
  expect(scripts.length).toBeGreaterThan(100_000);
  expect(scripts).not.toMatch(/ZodError|invalid_union/);
});

test('no path leads out of the page’s folder', async ({ app }) => {
  const answers = await app.page.evaluate(() =>
    Promise.all(
      [
        '../package.json',
        '%2e%2e/main.cjs',
        '..%2fmain.cjs',
        '..%5cmain.cjs',
        '%2e%2e%2f%2e%2e%2fpackage.json',
        'assets/../../main.cjs',
      ].map((path) => fetch(`${location.origin}/${path}`).then((answer) => answer.status)),
    ),
  );
  expect(answers).toEqual([404, 404, 404, 404, 404, 404]);
});
