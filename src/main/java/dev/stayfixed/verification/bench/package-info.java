/** What measurements at the bench prove of a repair, beside the trips and never mixed with them. Pure. */
@NullMarked
package dev.stayfixed.verification.bench;

import org.jspecify.annotations.NullMarked;
