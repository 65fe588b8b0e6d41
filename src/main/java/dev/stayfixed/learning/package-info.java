/**
 * What a shop learns from its repairs: how many hold at once, which come back, how long proof takes. Open
 * {@link dev.stayfixed.learning.Learning} first, then {@code Attempts} and {@code Comebacks}. May depend on {@code jobs},
 * {@code judging}, {@code telling}, {@code platform} and the pure packages.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.learning;
