/** The pages in a real browser. Open {@link dev.stayfixed.web.pages.Technician} first: it does what a technician does. */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.pages;
