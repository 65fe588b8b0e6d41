/**
 * Stayfixed: did the repair stay fixed, and can it be proven? Open {@link dev.stayfixed.StayfixedApplication} to start it; the
 * judgement itself is in {@code verification}.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed;
