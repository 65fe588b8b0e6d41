/** What goes over HTTP. The REST interface is in {@code api}. */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web;
