import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { escapeHtml, html, raw } from '../../../src/core/report/html.ts';

describe('markup', () => {
  it('escapes what is inserted and keeps what is markup already', () => {
    const name = '<img src=x onerror=alert(1)>';
    expect(html`<p title="${'"'}">${name}</p>`.text).toBe('<p title="&quot;">&lt;img src=x onerror=alert(1)&gt;</p>');
    expect(html`<p>${html`<b>${1}</b>`}${raw('<i></i>')}${null}</p>`.text).toBe('<p><b>1</b><i></i></p>');
    expect(html`${['a', html`<hr>`, '&']}`.text).toBe('a<hr>&amp;');
  });

  it('never lets text of any kind open or close a tag or an attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(escapeHtml(text)).not.toMatch(/[<>"']/);
      }),
    );
  });
});
