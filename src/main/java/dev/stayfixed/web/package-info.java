/** What the leaves of all rooms share: the REST interface in {@code api}, the pages in {@code pages}. */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.web;
