/** How long a repair has held so far, which is weaker than any proof. Pure. */
@NullMarked
package dev.stayfixed.verification.held;

import org.jspecify.annotations.NullMarked;
