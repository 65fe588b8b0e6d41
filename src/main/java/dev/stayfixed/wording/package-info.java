/**
 * Words and units for the person who reads: the texts of the bundles {@code reasons*.properties}, one file a language, around the
 * quantities of a reason. Open {@link dev.stayfixed.wording.Wording} first.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.wording;
