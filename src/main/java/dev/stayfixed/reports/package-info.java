/**
 * The close-out report: facts gathered from what is stored, a fingerprint over them, the PDF, and a later check that a report is what
 * was issued. Open {@link dev.stayfixed.reports.Reports} first. May depend on {@code jobs}, {@code intake}, {@code driver}, {@code
 * platform} and the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.reports;
