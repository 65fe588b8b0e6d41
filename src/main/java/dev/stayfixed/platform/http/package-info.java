/**
 * What every request goes through before a controller: size and encoding of the body, repeated submissions, security headers. Open
 * {@link dev.stayfixed.platform.http.RequestFilters} first. May depend on Spring and on {@code platform}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.platform.http;
