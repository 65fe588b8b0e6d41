/** What is written of people: one record each, with its limits. */
@NullMarked
package dev.stayfixed.people.entry;

import org.jspecify.annotations.NullMarked;
