/** The pages of signing in, of people and of tokens. */
@NullMarked
package dev.stayfixed.people.pages;

import org.jspecify.annotations.NullMarked;
