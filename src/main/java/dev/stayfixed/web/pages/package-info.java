/**
 * The technician's pages: rendered on the server, every form works without script. Open {@link dev.stayfixed.web.pages.FirstPage}
 * first, then {@link dev.stayfixed.web.pages.JobPage}. May depend on {@code intake}, {@code jobs}, {@code platform} and the pure
 * packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web.pages;
