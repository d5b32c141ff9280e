import { HtmlValidate } from 'html-validate';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // Written so by the generator, and valid: attribute quoting, doctype case, trailing blanks.
    'attr-quotes': 'off',
    'doctype-style': 'off',
    'no-trailing-whitespace': 'off',
    'void-style': 'off',
    // A title longer than 70 letters is a matter of search engines, which these pages turn away.
    'long-title': 'off',
    // Names of landmarks are on the headings; regions that scroll carry a name of their own.
    'prefer-native-element': 'off',
    'no-inline-style': 'error',
  },
});

/**
 * Faults of a page's HTML.
 * @param html - the page
 * @param page - its address, for the messages
 */
export async function problemsOf(html: string, page: string): Promise<string[]> {
  const report = await validator.validateString(html);
  return report.results.flatMap((r) => r.messages.map((m) => `${page}:${m.line} ${m.ruleId}: ${m.message}`));
}
