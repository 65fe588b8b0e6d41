/**
 * The REST interface of reports: issue one, fetch its PDF, and check later that a report is what was issued. Open {@link
 * dev.stayfixed.reports.api.ReportController} first. May depend on {@code reports} and {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.reports.api;
