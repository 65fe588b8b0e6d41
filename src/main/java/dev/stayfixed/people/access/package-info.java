/** How a request is told to be somebody's, and what it may do: the glue to Spring Security. */
@NullMarked
package dev.stayfixed.people.access;

import org.jspecify.annotations.NullMarked;
