/**
 * What all pages share: forms that work without script, words and units for the shop, errors, and reading a pasted scan. Open {@link
 * dev.stayfixed.web.pages.Form} first, then {@link dev.stayfixed.web.pages.Show}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.pages;
