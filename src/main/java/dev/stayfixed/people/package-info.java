/** Who may use the service, and what each of them may do. */
@NullMarked
package dev.stayfixed.people;

import org.jspecify.annotations.NullMarked;
