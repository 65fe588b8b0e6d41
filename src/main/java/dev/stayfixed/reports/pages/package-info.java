/**
 * The pages of reports and job sheets. Open {@link dev.stayfixed.reports.pages.ReportPage} first. A leaf: may know every room, and no room knows it.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.reports.pages;
